import type { Alignment } from "../../../shared/plan.ts";
import { formatLength } from "../../../shared/units.ts";
import { edit, withAlternativeChanged } from "../../document/edits/alternatives.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";

/** That a line keeps the setback it was made with, and how to go by the plan's; nothing where both are the same. */
export function OwnSetback({ alternative }: { alternative: Alignment }) {
  const { setbackM } = alternative;
  const ofPlanM = plan.value.practice.setbackM;
  if (setbackM === undefined || setbackM === ofPlanM) return null;
  const words = (m: number) => formatLength(m, unitSystem.value);
  return (
    <p class="hint">
      Made with a setback of {words(setbackM)}; the plan's is {words(ofPlanM)}.{" "}
      <button type="button" class="text-button" onClick={() => goByPlan(alternative)}>
        Use the plan's
      </button>
    </p>
  );
}

function goByPlan({ id, name }: Alignment): void {
  edit({
    note: `Use the plan's setback for ${name}`,
    change: (of) => withAlternativeChanged(of, id, withoutSetback),
  });
}

/** The line without a setback of its own: it goes by the plan's from now on. */
export function withoutSetback({ setbackM: _, ...alternative }: Alignment): Alignment {
  return alternative;
}
