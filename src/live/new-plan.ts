import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { Plan, TerrainRef, VerticalUnit } from "../../shared/plan.ts";
import { tell } from "../document/notices.ts";
import { plan, replacePlan } from "../document/store.ts";
import { example } from "./demo-sites.ts";
import { ground } from "./ground.ts";

function saidUnit(open: GroundSummary | null): VerticalUnit | null {
  return open?.verticalUnitFrom === "person" ? open.verticalUnit : null;
}

/**
 * A plan of nothing but its ground. Everything starts from its default, so that no figure of another plan's levee,
 * soil, crew or river is taken for this one's; only the ground, its unit and what was said of its heights stay.
 * Nothing is counted until a stage or an elevation is typed.
 */
export function freshPlan(
  summary: GroundSummary | null,
  terrain: readonly TerrainRef[],
  marks: Plan["ground"]["marks"],
): Plan {
  return {
    ...EMPTY_PLAN,
    water: { ...EMPTY_PLAN.water, given: false },
    ground: { ...EMPTY_PLAN.ground, verticalUnit: saidUnit(summary), marks },
    terrain,
  };
}

/**
 * Starts afresh on the ground now open, as one step that can be undone; from an example without any ground, which is
 * invented there.
 */
export function startNewPlan(): void {
  const summary = example.peek() ? null : ground.peek();
  const terrain = summary?.files.map(({ name, bytes }) => ({ name, bytes })) ?? [];
  const marks = summary ? plan.peek().ground.marks : undefined;
  const outcome = replacePlan(freshPlan(summary, terrain, marks), "Start a new plan");
  if (!outcome.ok) tell("error", outcome.failure);
}
