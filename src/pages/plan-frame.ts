import type { LonLat, Plan } from "../../shared/plan.ts";
import { type PlanPlane, planPlane } from "../../shared/plan-plane.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { ToSpot } from "./plan-paths.ts";
import type { PlanScale } from "./plan-scale.ts";
import { type PlanWindow, planWindows } from "./plan-windows.ts";

/** One drawing of the plan: north up, to its scale, and the part of the line that it is for. */
export interface PlanFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly scale: PlanScale;
  readonly fromM: number;
  readonly toM: number;
  readonly toSpot: ToSpot;
}

/** Room for labels beside the line, millimetres. */
const SIDE_MM = 22;
const ABOVE_MM = 13;
/** Samples of the walk looked at to divide a line into pages, at most. */
const MOST_SAMPLES = 1500;

/** Lays a line out on as many drawings as it takes in the room given. */
export function planFrames(
  plan: Plan,
  line: SizedLine,
  room: { readonly widthMm: number; readonly heightMm: number },
  system: UnitSystem,
): PlanFrame[] {
  const { lonLat, chainageM } = line.walk;
  if (chainageM.length === 0) return [];
  const at = (i: number): LonLat => [lonLat[2 * i]!, lonLat[2 * i + 1]!];
  const plane = planPlane(at(0));
  const every = Math.ceil(chainageM.length / MOST_SAMPLES);
  const path = Array.from(chainageM, (m, i) => {
    const [x, y] = plane.toPlane(at(i));
    return { chainageM: m, x, y };
  }).filter((_, i) => i % every === 0 || i === chainageM.length - 1);
  const buildings = plan.structures.flatMap(({ outline }) =>
    outline.map((to) => plane.toPlane(to)),
  );
  const inner = { widthMm: room.widthMm - 2 * SIDE_MM, heightMm: room.heightMm - 2 * ABOVE_MM };
  return planWindows(path, buildings, inner, system).map((window) => frameOf(window, plane, room));
}

function frameOf(
  { fromM, toM, middle, scale }: PlanWindow,
  plane: PlanPlane,
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
): PlanFrame {
  const toSpot: ToSpot = (at) => {
    const [x, y] = plane.toPlane(at);
    return [
      widthMm / 2 + (x - middle[0]) / scale.mPerMm,
      heightMm / 2 - (y - middle[1]) / scale.mPerMm,
    ];
  };
  return { widthMm, heightMm, scale, fromM, toM, toSpot };
}
