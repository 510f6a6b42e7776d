import { failureOf } from "../../../shared/failure.ts";
import type { CallOptions } from "../../../shared/messages.ts";
import { withCorners } from "../../../shared/pins.ts";
import type { Alignment, LonLat, Plan } from "../../../shared/plan.ts";
import type { ImproveLineResponse } from "../../../shared/search-types.ts";
import type { Totals } from "../../../shared/sizing-types.ts";
import { edit, withAlternativeChanged } from "../../document/edits/alternatives.ts";
import { tell } from "../../document/notices.ts";
import { plan } from "../../document/store.ts";
import { engine } from "../../engine.ts";
import { sameParts } from "../parts.ts";
import { withoutCarried } from "../question.ts";
import { type Inputs, inputsOf } from "./found.ts";
import { planToSearch } from "./plan-to-search.ts";
import { ringSettings } from "./ring-settings.ts";
import { working } from "./working.ts";

/** What improving a line came to; `before` is the line as drawn, however often it was improved since. */
export interface Improved extends ImproveLineResponse {
  readonly drawn: Alignment;
  readonly inputs: Inputs;
}

const improvedTo = new WeakMap<readonly LonLat[], Improved>();

/** What improving came to, while the line lies where that put it and nothing changed that it was for. */
export function improvedNow(line: Alignment, of: Plan): Improved | null {
  const last = improvedTo.get(line.corners);
  return last && sameParts(last.inputs, inputsOf(of)) ? last : null;
}

/** Moves the corners of an alternative to the nearest cheaper places, as one step of undo. Pinned ones stay. */
export async function improveAlternative(line: Alignment): Promise<void> {
  const { id, name } = line;
  const of = plan.peek();
  const request = { plan: planToSearch(of), id, maxCorners: ringSettings.peek().maxCorners };
  const answer = await working(async (options) => {
    const step = await engine.improveLine(request, options);
    const isMoved = step.after.bags !== step.before.bags;
    return { ...step, isMoved, ...(await asDrawn(line, of, step.before, options)) };
  });
  if (!answer) return;
  const now = plan.peek().alignments.find((each) => each.id === id);
  if (now?.corners !== line.corners) {
    return tell("info", failureOf("site/unchanged", { name, why: "changed" }));
  }
  const { isMoved, ...result } = answer;
  const { corners, pinned, setbackM } = result;
  if (!isMoved) return tell("info", failureOf("site/unchanged", { name, why: "no-saving" }));
  improvedTo.set(corners, { ...result, inputs: inputsOf(of) });
  edit({
    note: `Improve ${name}`,
    change: (of) =>
      withAlternativeChanged(of, id, (each) => {
        const { pinned: _, ...line } = withCorners(each, corners);
        const moved = { ...line, setbackM };
        return pinned.length > 0 ? { ...moved, pinned } : moved;
      }),
  });
}

/**
 * The line that a saving is against, and its totals: as it was drawn before it was first improved, sized again where
 * something has changed since.
 */
async function asDrawn(
  line: Alignment,
  of: Plan,
  before: Totals,
  options: CallOptions,
): Promise<Pick<Improved, "drawn" | "before">> {
  const last = improvedTo.get(line.corners);
  if (!last) return { drawn: line, before };
  const { drawn } = last;
  if (sameParts(last.inputs, inputsOf(of))) return { drawn, before: last.before };
  const { id, name, kind, corners } = drawn;
  const alignments = [{ id, name, kind, corners, reachBreaksM: [] }];
  const plan = { ...withoutCarried(of), alignments, chosenId: id };
  const { lines } = await engine.size({ plan, live: true }, options);
  return { drawn, before: lines[0]!.totals };
}
