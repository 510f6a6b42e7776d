import type { Exported } from "../../shared/exports/exported.ts";
import type { Plan } from "../../shared/plan.ts";
import { workPlaceWords } from "../../shared/words/work-places.ts";
import { nearestChainage } from "../drawing/line/along.ts";
import type { PlanFrame } from "./plan-frame.ts";
import type { Label } from "./plan-labels.ts";
import { pathOf, type Spot } from "./plan-paths.ts";

/** Symbols, their middle at the origin, millimetres: a heap of sand, a box of pumps with the throw of one. */
const SYMBOLS = {
  pile: "M-3.4 1.8C-2.2-.8-1.4-2 0-2S2.2-.8 3.4 1.8Z",
  pumps: "M-1.7-1.7h3.4v3.4h-3.4zM0-.7a.9.9 0 1 0 .01 0M0-.7H1.3",
} as const;
/** The head of a truck way, its tip at the origin, pointing right. */
const HEAD = "M0 0-3.6 1.5V-1.5z";
/** Room that a work place's symbol takes to all sides, millimetres. */
export const WORK_PLACE_MM = 2.6;

interface WorkPlacesProps {
  readonly plan: Plan;
  readonly frame: PlanFrame;
}

/** Trucks' ways in as heavy arrows, piles and pumps as symbols. */
export function PlanWorkPlaces({ plan, frame: { toSpot } }: WorkPlacesProps) {
  return (plan.workPlaces ?? []).map(({ id, kind, path }) => {
    const [x, y] = toSpot(path.at(-1)!);
    if (kind !== "truck-way") {
      return (
        <path
          key={id}
          class="plan-work-place"
          d={SYMBOLS[kind]}
          transform={`translate(${x} ${y})`}
        />
      );
    }
    const [fromX, fromY] = toSpot(path.at(-2)!);
    const turn = (Math.atan2(y - fromY, x - fromX) * 180) / Math.PI;
    return (
      <g key={id}>
        <path class="plan-truck-halo" d={pathOf(path, toSpot, false)} />
        <path class="plan-truck-way" d={pathOf(path, toSpot, false)} />
        <path
          class="plan-truck-head"
          d={HEAD}
          transform={`translate(${x} ${y}) rotate(${turn.toFixed(1)})`}
        />
      </g>
    );
  });
}

/** Where the symbols are that no words may cover: a way at its head. */
export function workPlaceSpots(plan: Plan, { toSpot }: PlanFrame): Spot[] {
  return (plan.workPlaces ?? []).map(({ path }) => toSpot(path.at(-1)!));
}

/** The legs of trucks' ways in. */
export function truckLegs(plan: Plan, { toSpot }: PlanFrame): (readonly [Spot, Spot])[] {
  return (plan.workPlaces ?? []).flatMap(({ path }) =>
    path.slice(1).map((to, i) => [toSpot(path[i]!), toSpot(to)] as const),
  );
}

/** What is written at them. */
export function workPlaceLabels(of: Exported, frame: PlanFrame): Label[] {
  return (of.plan.workPlaces ?? []).map((place): Label => {
    const at = place.path.at(-1)!;
    const near = nearestChainage(of.line.walk, at);
    return {
      key: `work place ${place.id}`,
      point: frame.toSpot(at),
      words: workPlaceWords(place, of, near).map((text, i) => ({
        text,
        look: i === 0 ? "strong" : "small",
      })),
      ...{ layout: "stack", away: [0, 0], reach: "around", hasLeader: true },
      isClear: place.kind !== "pumps",
    };
  });
}
