import { boxAround } from "../../shared/site.ts";
import { legBreach } from "./leg-price.ts";
import { priceAt } from "./price-table.ts";
import { grown, type SearchTerms, searchTerms } from "./search-terms.ts";
import type { Point, SearchRequest, SearchStep } from "./types.ts";

/** What moving a line sideways would cost, station by station. All arrays have the same length. */
export interface SidewaysCost {
  readonly chainageM: Float64Array;
  readonly xM: Float64Array;
  readonly yM: Float64Array;
  /**
   * Change of volume per metre of line and metre of move to the left (right) of chainage, m3 per m2: below 0
   * where moving saves. NaN where the move is not allowed or its ground is not known.
   */
  readonly left: Float64Array;
  readonly right: Float64Array;
  /** How far the line was moved to find out, metres. */
  readonly moveM: number;
}

const SPACING_M = 2;
const ROOM_M = 5;
/** Length of line that is moved when asking whether a move is allowed, metres. */
const PIECE_M = 0.5;

/**
 * Why the line is here: every two metres, the price of placing a metre of levee a
 * little further left or right, less the price of placing it where it is. A line at its best place on open
 * ground shows no saving on either side; one that shows a saving to one side is held there by its corners
 * or by its length.
 * @param moveM how far to move, metres: the change is divided by it
 */
export function* sidewaysCost(
  request: SearchRequest,
  corners: readonly Point[],
  closed: boolean,
  moveM = 1,
): Generator<SearchStep, SidewaysCost> {
  const { minX, minY, maxX, maxY } = grown(boxAround(corners), ROOM_M + moveM);
  const outline: Point[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  const terms = searchTerms({ ...request, window: { outline } });
  const stations = stationsAlong(corners, closed);
  const count = stations.length;
  const result = {
    chainageM: new Float64Array(count),
    xM: new Float64Array(count),
    yM: new Float64Array(count),
    left: new Float64Array(count),
    right: new Float64Array(count),
    moveM,
  };
  for (const [k, { chainageM, x, y, leftX, leftY }] of stations.entries()) {
    yield { share: k / count, doing: "Moving the line sideways" };
    const here = priceOfPlace(terms, x, y);
    const change = (side: number) => {
      const [u, v] = [x + side * moveM * leftX, y + side * moveM * leftY];
      if (!allowed(terms, u, v, leftX, leftY)) return Number.NaN;
      return (priceOfPlace(terms, u, v) - here) / moveM;
    };
    result.chainageM[k] = chainageM;
    result.xM[k] = x;
    result.yM[k] = y;
    result.left[k] = change(1);
    result.right[k] = change(-1);
  }
  return result;
}

interface StationPlace {
  readonly chainageM: number;
  readonly x: number;
  readonly y: number;
  readonly leftX: number;
  readonly leftY: number;
}

function stationsAlong(corners: readonly Point[], closed: boolean): StationPlace[] {
  const places: StationPlace[] = [];
  const legs = closed ? corners.length : corners.length - 1;
  let chainageM = 0;
  for (let k = 0; k < legs; k++) {
    const [x1, y1] = corners[k]!;
    const [x2, y2] = corners[(k + 1) % corners.length]!;
    const length = Math.hypot(x2 - x1, y2 - y1);
    if (length === 0) continue;
    const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
    const steps = Math.max(1, Math.ceil(length / SPACING_M));
    for (let i = 0; i < steps; i++) {
      const along = ((i + 0.5) / steps) * length;
      const [x, y] = [x1 + along * ux, y1 + along * uy];
      places.push({ chainageM: chainageM + along, x, y, leftX: -uy, leftY: ux });
    }
    chainageM += length;
  }
  return places;
}

/** Price of a metre of levee at a place, m3; NaN where the ground is not known. */
function priceOfPlace(terms: SearchTerms, x: number, y: number): number {
  const heightM = terms.crest.at(x, y) - terms.ground.source.heightAt(x, y);
  return Number.isNaN(heightM) ? Number.NaN : priceAt(terms.table, heightM);
}

function allowed(terms: SearchTerms, x: number, y: number, leftX: number, leftY: number): boolean {
  const [halfX, halfY] = [(leftY * PIECE_M) / 2, (-leftX * PIECE_M) / 2];
  return legBreach(terms, x - halfX, y - halfY, x + halfX, y + halfY) === 0;
}
