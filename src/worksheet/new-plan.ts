import { EMPTY_PLAN, holdingOf, timeOf } from "../../shared/defaults.ts";
import { plan, replacePlan } from "../document/store.ts";
import { ground, tell } from "../state.ts";

/**
 * Starts afresh on the ground now open, as one step that can be undone. How the levee is built and by whom
 * stays; lines, buildings, river, stage and forecast belong to a place and go. The water starts at the lowest
 * ground, where it covers nothing, until a stage or an elevation is typed.
 */
export function startNewPlan(): void {
  const now = plan.value;
  const lowestM = ground.value?.lowestM ?? Number.NaN;
  const elevationM = Number.isFinite(lowestM) ? lowestM : EMPTY_PLAN.water.elevationM;
  const outcome = replacePlan(
    {
      ...EMPTY_PLAN,
      water: {
        ...EMPTY_PLAN.water,
        by: "elevation",
        elevationM,
        freeboardM: now.water.freeboardM,
      },
      ground: now.ground,
      section: now.section,
      practice: now.practice,
      holding: holdingOf(now),
      time: { ...timeOf(now), forecast: null, startAt: null },
      terrain: now.terrain,
    },
    "Start a new plan",
  );
  if (!outcome.ok) tell("error", outcome.failure);
}
