import { withCorners, withPin } from "../../../shared/pins.ts";
import type { Alignment, LonLat, Plan } from "../../../shared/plan.ts";
import { type PlanPlane, planPlane } from "../../../shared/plan-plane.ts";
import { edit, withAlternativeChanged } from "./alternatives.ts";

const DECIMALS = 9;

/** Corners as metres east and north of a reference point of the site. */
export interface CornerFrame {
  readonly plane: PlanPlane;
  /** What the offsets count from, for the table's head. */
  readonly from: string;
}

/** The frame of the corner table: counted from the middle of the first building, else from the first corner. */
export function cornerFrame(plan: Plan, alternative: Alignment): CornerFrame {
  const structure = plan.structures[0];
  const points = structure?.outline ?? [alternative.corners[0]!];
  const lon = points.reduce((sum, each) => sum + each[0], 0) / points.length;
  const lat = points.reduce((sum, each) => sum + each[1], 0) / points.length;
  return {
    plane: planPlane([lon, lat]),
    from: structure ? `the middle of ${structure.name || "the building"}` : "the first corner",
  };
}

/** A place rounded as the plan keeps it. */
export function rounded(lon: number, lat: number): LonLat {
  return [Number(lon.toFixed(DECIMALS)), Number(lat.toFixed(DECIMALS))];
}

/** The alternative with one corner put elsewhere. */
function withCornerAt(alternative: Alignment, index: number, at: LonLat): Alignment {
  return withCorners(
    alternative,
    alternative.corners.map((corner, i) => (i === index ? at : corner)),
  );
}

/** The alternative with a corner in the middle of the leg after `index`; past a line's end, none. */
export function withCornerInserted(alternative: Alignment, index: number): Alignment {
  const { corners, kind } = alternative;
  const from = corners[index];
  const to = kind === "ring" ? corners[(index + 1) % corners.length] : corners[index + 1];
  if (!from || !to) return alternative;
  const middle = rounded((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
  return withCorners(alternative, [
    ...corners.slice(0, index + 1),
    middle,
    ...corners.slice(index + 1),
  ]);
}

/** Fewest corners a line of this kind may have. */
export function fewestCorners(kind: Alignment["kind"]): number {
  return kind === "ring" ? 3 : 2;
}

/** The alternative without one corner; unchanged when it has no corner to spare. */
export function withoutCorner(alternative: Alignment, index: number): Alignment {
  if (alternative.corners.length <= fewestCorners(alternative.kind)) return alternative;
  return withCorners(
    alternative,
    alternative.corners.filter((_, i) => i !== index),
  );
}

/** Moves one corner by metres east and north; moves with the same gesture are one step of undo. */
export function nudgeCorner(
  frame: CornerFrame,
  alternative: Alignment,
  index: number,
  by: { readonly eastM: number; readonly northM: number },
  gesture: string,
): void {
  editCorner(alternative, `Move corner ${index + 1} of ${alternative.name}`, gesture, (now) => {
    const [x, y] = frame.plane.toPlane(now.corners[index]!);
    const [lon, lat] = frame.plane.toLonLat(x + by.eastM, y + by.northM);
    return withCornerAt(now, index, rounded(lon, lat));
  });
}

export function placeCorner(alternative: Alignment, index: number, at: LonLat, gesture?: string) {
  return editCorner(
    alternative,
    `Move corner ${index + 1} of ${alternative.name}`,
    gesture,
    (now) => withCornerAt(now, index, rounded(at[0], at[1])),
  );
}

export function insertCorner(alternative: Alignment, index: number): void {
  editCorner(alternative, `Insert a corner in ${alternative.name}`, undefined, (now) =>
    withCornerInserted(now, index),
  );
}

export function deleteCorner(alternative: Alignment, index: number): void {
  editCorner(alternative, `Delete corner ${index + 1} of ${alternative.name}`, undefined, (now) =>
    withoutCorner(now, index),
  );
}

/** Pins a corner, so that improving the line leaves it where it is, or takes the pin out. */
export function pinCorner(alternative: Alignment, index: number, pinned: boolean): void {
  const what = pinned ? "Pin" : "Unpin";
  editCorner(alternative, `${what} corner ${index + 1} of ${alternative.name}`, undefined, (now) =>
    withPin(now, index, pinned),
  );
}

function editCorner(
  alternative: Alignment,
  note: string,
  gesture: string | undefined,
  change: (now: Alignment) => Alignment,
): boolean {
  return edit({
    note,
    gesture,
    change: (plan) => withAlternativeChanged(plan, alternative.id, change),
  });
}
