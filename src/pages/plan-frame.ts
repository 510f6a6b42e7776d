import type { LonLat, Plan } from "../../shared/plan.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { Spot, ToSpot } from "./plan-paths.ts";
import { type PlanScale, planScale } from "./plan-scale.ts";

export interface PlanFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly scale: PlanScale;
  readonly toSpot: ToSpot;
}

/** Room for station labels and the toes round the corners, millimetres. */
const EDGE_MM = 17;

/** Lays the chosen line and its buildings out to a usual scale, north up, in the middle of the room. */
export function planFrame(
  plan: Plan,
  line: SizedLine,
  room: { readonly widthMm: number; readonly heightMm: number },
  system: UnitSystem,
): PlanFrame {
  const corners = plan.alignments.find((each) => each.id === line.id)?.corners ?? [];
  const shown = [...corners, ...plan.structures.flatMap((each) => [...each.outline])];
  const plane = planPlane(shown[0]!);
  const places = shown.map((at) => plane.toPlane(at));
  const [minX, maxX] = extent(places.map(([x]) => x));
  const [minY, maxY] = extent(places.map(([, y]) => y));
  const inner = { widthMm: room.widthMm - 2 * EDGE_MM, heightMm: room.heightMm - 2 * EDGE_MM };
  const scale = planScale({ widthM: maxX - minX, heightM: maxY - minY }, inner, system);
  const heightMm = Math.min(room.heightMm, (maxY - minY) / scale.mPerMm + 2 * EDGE_MM);
  const toSpot = (at: LonLat): Spot => {
    const [x, y] = plane.toPlane(at);
    return [
      room.widthMm / 2 + (x - (minX + maxX) / 2) / scale.mPerMm,
      heightMm / 2 - (y - (minY + maxY) / 2) / scale.mPerMm,
    ];
  };
  return { widthMm: room.widthMm, heightMm, scale, toSpot };
}

function extent(values: readonly number[]): [number, number] {
  return values.reduce<[number, number]>(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [Infinity, -Infinity],
  );
}
