import { signal } from "@preact/signals";
import { withCorners } from "../../../shared/pins.ts";
import type { Alignment } from "../../../shared/plan.ts";
import type { ImproveLineResponse } from "../../../shared/siting-types.ts";
import { edit, withAlternativeChanged } from "../../document/edits/alternatives.ts";
import { tell } from "../../document/notices.ts";
import { plan } from "../../document/store.ts";
import { engine } from "../../engine.ts";
import { decided } from "../question.ts";
import { type Inputs, inputsOf } from "./found.ts";
import { findWish } from "./wish.ts";
import { working } from "./working.ts";

/** What improving a line came to, for as long as its corners are those and nothing else changes that it was for. */
export interface Improved extends ImproveLineResponse {
  readonly id: string;
  readonly inputs: Inputs;
}

export const improved = signal<Improved | null>(null);

/** Moves the corners of an alternative to the nearest cheaper places, as one step of undo. Pinned ones stay. */
export async function improveAlternative({ id, name, corners: drawn }: Alignment): Promise<void> {
  const of = plan.peek();
  const request = { plan: decided(of), id, maxCorners: findWish.peek().maxCorners };
  const answer = await working((options) => engine.improveLine(request, options));
  if (!answer) return;
  const now = plan.peek().alignments.find((each) => each.id === id);
  if (now?.corners !== drawn) {
    return sayUnchanged(name, "It was changed meanwhile.", "Improve it again.");
  }
  const { corners, pinned, setbackM, before, after } = answer;
  if (after.bags === before.bags) {
    const why =
      "A move of a few metres saves nothing: its corners lie where they need the fewest bags.";
    return sayUnchanged(name, why, "Find the ring looks further away.");
  }
  const done = edit({
    note: `Improve ${name}`,
    change: (of) =>
      withAlternativeChanged(of, id, (each) => {
        const { pinned: _, ...line } = withCorners(each, corners);
        const moved = { ...line, setbackM };
        return pinned.length > 0 ? { ...moved, pinned } : moved;
      }),
  });
  if (done) improved.value = { ...answer, id, inputs: inputsOf(of) };
}

function sayUnchanged(name: string, why: string, remedy: string): void {
  tell("info", { code: "site/unchanged", message: `${name} stays as it is. ${why}`, remedy });
}
