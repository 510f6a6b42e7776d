import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { VerticalUnit } from "../../shared/plan.ts";
import { tell } from "../document/notices.ts";
import { plan, replacePlan } from "../document/store.ts";
import { ground } from "./ground.ts";

function saidUnit(open: GroundSummary | null): VerticalUnit | null {
  return open?.verticalUnitFrom === "person" ? open.verticalUnit : null;
}

/**
 * Starts afresh on the ground now open, as one step that can be undone. Everything starts from its default, so
 * that no figure of another plan's levee, soil, crew or river is taken for this one's; only the ground that is
 * open, its unit and what was said of its heights stay. Nothing is counted until a stage or an elevation is typed.
 */
export function startNewPlan(): void {
  const outcome = replacePlan(
    {
      ...EMPTY_PLAN,
      water: { ...EMPTY_PLAN.water, given: false },
      ground: {
        ...EMPTY_PLAN.ground,
        verticalUnit: saidUnit(ground.value),
        marks: plan.value.ground.marks,
      },
      terrain: ground.value?.files.map(({ name, bytes }) => ({ name, bytes })) ?? [],
    },
    "Start a new plan",
  );
  if (!outcome.ok) tell("error", outcome.failure);
}
