import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { beside, spotAt } from "../drawing/line/along.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import type { PlanFrame } from "./plan-frame.ts";
import type { Spot } from "./plan-paths.ts";

/** How far match lines run from the toes on the drawing, millimetres. */
const MATCH_MM = { water: 2, land: 12 } as const;

interface OnFrame {
  readonly line: SizedLine;
  readonly frame: PlanFrame;
}

/** Pages that the line goes on, if it does: where it comes from and where it goes to. */
export interface OtherPages {
  readonly before: number | null;
  readonly after: number | null;
}

export const ALONE: OtherPages = { before: null, after: null };

/** A point on the toe of one side at a chainage, and the way out from there; null without samples. */
export function toeAt(
  { line, frame, side }: OnFrame & { readonly side: 1 | -1 },
  chainageM: number,
  which: "water" | "land",
): { readonly point: Spot; readonly away: Spot } | null {
  const spot = spotAt(line.walk, chainageM);
  if (!spot) return null;
  const sign = which === "water" ? side : -side;
  const toeM = sign > 0 ? spot.toeLeftM : spot.toeRightM;
  return {
    point: frame.toSpot(beside(spot, sign * toeM)),
    away: [sign * spot.left[0], -sign * spot.left[1]],
  };
}

/** A match line from beside the water side's toe, where the station's figures are, to the land side. */
export function matchEnds(
  { plan, line, frame }: OnFrame & { readonly plan: Plan },
  atM: number,
): readonly [Spot, Spot] | null {
  const inPlace = { line, frame, side: waterSideIn(plan, line.id) };
  const [out, back] = [toeAt(inPlace, atM, "water"), toeAt(inPlace, atM, "land")];
  if (!out || !back) return null;
  const on = ({ point, away }: NonNullable<typeof out>, mm: number): Spot => [
    point[0] + away[0] * mm,
    point[1] + away[1] * mm,
  ];
  return [on(out, MATCH_MM.water), on(back, MATCH_MM.land)];
}
