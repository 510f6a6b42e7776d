import type { Feature, FeatureCollection, Position } from "geojson";
import { moved, type Place } from "../../shared/line-shapes/offset.ts";
import { pinsOf } from "../../shared/pins.ts";
import type { Alignment, LonLat } from "../../shared/plan.ts";
import type { SidewaysCostResponse } from "../../shared/search-types.ts";
import { formatCount, type UnitSystem } from "../../shared/units.ts";
import { costIn } from "../../shared/words/sideways-cost.ts";

/** Ways over ground above the crest that a found line leaves open, and the pinned corners of a line. */
export function lineMarks(
  free: readonly (readonly LonLat[])[],
  pinned: Alignment | null,
): FeatureCollection {
  const open = free.map((path) => line("free", path.map(positionOf)));
  const pins = pinned
    ? pinsOf(pinned).map((k) => point("pin", positionOf(pinned.corners[k]!)))
    : [];
  return { type: "FeatureCollection", features: [...open, ...pins] };
}

/** Arrows no nearer to each other than this, CSS pixels. */
const APART_PX = 30;
/** Length of the longest arrow, of the shortest, and gap between the line and its foot, CSS pixels. */
const LONGEST_PX = 34;
const SHORTEST_PX = 9;
const GAP_PX = 9;
const HEAD_PX = 6;
/** Savings smaller than this are not drawn, bags in the unit that they are written in. */
const LEAST_BAGS = 1;

/**
 * Arrows (`arrow`) from a line to the side on which a move saves, as long as it saves much, with the bags
 * saved written at their tips (`saving`).
 */
export function savingArrows(
  costs: SidewaysCostResponse,
  metresPerPx: number,
  system: UnitSystem,
): FeatureCollection {
  const arrows = arrowsOf(costs, APART_PX * metresPerPx, system);
  const most = Math.max(...arrows.map(({ bags }) => bags));
  const features = arrows.flatMap(({ at, toward, bags }) => {
    const lengthPx = SHORTEST_PX + (LONGEST_PX - SHORTEST_PX) * (bags / most);
    const along = (px: number, besidePx = 0): Place => {
      const [m, besideM] = [px * metresPerPx, besidePx * metresPerPx];
      return moved(at, toward[0] * m - toward[1] * besideM, toward[1] * m + toward[0] * besideM);
    };
    const tipPx = GAP_PX + lengthPx;
    const back = tipPx - HEAD_PX;
    return [
      line("arrow", [along(GAP_PX), along(tipPx)]),
      line("arrow", [along(back, HEAD_PX * 0.6), along(tipPx), along(back, -HEAD_PX * 0.6)]),
      {
        ...point("saving", along(tipPx + 9)),
        properties: { kind: "saving", text: `−${formatCount(Math.round(bags))}`, rank: -bags },
      },
    ];
  });
  return { type: "FeatureCollection", features };
}

interface Arrow {
  readonly at: Place;
  /** East and north. */
  readonly toward: readonly [number, number];
  readonly bags: number;
}

/** The greatest saving on each stretch of some length, on the side where it is greater. */
function arrowsOf(costs: SidewaysCostResponse, stretchM: number, system: UnitSystem): Arrow[] {
  const best = new Map<number, Arrow>();
  for (const [k, chainageM] of costs.chainageM.entries()) {
    const water = -costIn(costs.waterBagsPerM2[k]!, system);
    const land = -costIn(costs.landBagsPerM2[k]!, system);
    const isWater = !(land >= water);
    const bags = isWater ? water : land;
    if (!(bags >= LEAST_BAGS)) continue;
    const stretch = Math.floor(chainageM / stretchM);
    if (bags <= (best.get(stretch)?.bags ?? 0)) continue;
    const side = isWater ? 1 : -1;
    best.set(stretch, {
      at: [costs.lonLat[2 * k]!, costs.lonLat[2 * k + 1]!],
      toward: [side * costs.toWater[2 * k]!, side * costs.toWater[2 * k + 1]!],
      bags,
    });
  }
  return [...best.values()];
}

function positionOf(at: LonLat): Position {
  return [at[0], at[1]];
}

function line(kind: string, coordinates: Position[]): Feature {
  return { type: "Feature", properties: { kind }, geometry: { type: "LineString", coordinates } };
}

function point(kind: string, coordinates: Position): Feature {
  return { type: "Feature", properties: { kind }, geometry: { type: "Point", coordinates } };
}
