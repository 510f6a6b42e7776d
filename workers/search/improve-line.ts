import { refusal } from "../../shared/failure.ts";
import { boxAround } from "../../shared/site.ts";
import { type BentLine, bentLine, beside, legCount } from "./bent-line.ts";
import { deadlineIn } from "./deadline.ts";
import { legBreach } from "./leg-price.ts";
import { walkLine } from "./line-figures.ts";
import { SHAPING } from "./progress.ts";
import { refineLine } from "./refine-line.ts";
import { CORNER_SHARE } from "./search-ring.ts";
import { grown, type SearchTerms, searchTerms } from "./search-terms.ts";
import type { LineFigures, Point, SearchOptions, SearchRequest, SearchStep } from "./types.ts";

/** A drawn line to improve. */
export interface DrawnLine {
  readonly corners: readonly Point[];
  readonly closed: boolean;
  /** Corners that must stay, by index. */
  readonly pinnedCorners: readonly number[];
  /** Legs that must stay as they are, by the index of the corner they start at. */
  readonly pinnedLegs: readonly number[];
}

export interface ImprovedLine {
  readonly corners: readonly Point[];
  /** For each corner of the answer the index of the pinned corner it is, or -1. */
  readonly pinned: readonly number[];
  readonly before: LineFigures;
  readonly after: LineFigures;
  /**
   * Whether the line keeps clear of structures, no-go areas and water and has ground under its base, before
   * and after. What can be mended within the moves of a few metres is mended; the rest is left and said.
   */
  readonly keptRulesBefore: boolean;
  readonly keepsRules: boolean;
  readonly cutShort: boolean;
}

const TIME_CAP_MS = 2000;
const FROM_M = 3;
const TO_M = 0.01;
const LEAST_CORNER_PRICE = 0.02;
/** Room round the drawn line in which it may move, metres. */
const ROOM_M = 30;

/**
 * Moves the corners of a drawn line to the nearest cheaper place, drops corners that save nothing and adds
 * some where they save enough. Pinned corners and legs stay; the ends of an open line stay; every structure
 * and water stays on the side of the line it was on. The window of the request is not used: the line may
 * move within 30 m of where it was drawn.
 * @throws Refusal `site/too-few-corners`
 */
export function* improveLine(
  request: SearchRequest,
  drawn: DrawnLine,
  options: SearchOptions = {},
): Generator<SearchStep, ImprovedLine> {
  const { corners, closed } = drawn;
  const fewest = closed ? 3 : 2;
  if (corners.length < fewest) {
    throw refusal("site/too-few-corners", { closed, corners: corners.length });
  }
  const { over } = deadlineIn(options.timeCapMs ?? TIME_CAP_MS, options.now);
  const terms = searchTerms({ ...request, window: { outline: roomAround(corners) } });
  const ends = closed ? [] : [0, corners.length - 1];
  const pins = { corners: [...drawn.pinnedCorners, ...ends], legs: drawn.pinnedLegs };
  const line = bentLine(terms, Float64Array.from(corners.flat()), closed, pins);
  const before = walkLine(terms, corners, closed).figures;
  const breachBefore = breachOf(terms, line);
  yield SHAPING;
  yield* refineLine(terms, line, {
    cornerPrice: Math.max(LEAST_CORNER_PRICE, CORNER_SHARE * before.levelVolumeM3),
    maxCorners: Math.max(request.rule.maxCorners, corners.length),
    fromM: FROM_M,
    toM: TO_M,
    outOfTime: over,
  });
  yield SHAPING;
  const improved = line.x.map((x, k): Point => [x, line.y[k]!]);
  return {
    corners: improved,
    pinned: line.mark.map((mark, k) => (line.pinned[k] ? mark : -1)),
    before,
    after: walkLine(terms, improved, closed).figures,
    keptRulesBefore: breachBefore === 0,
    keepsRules: breachOf(terms, line) === 0,
    cutShort: over(),
  };
}

function roomAround(corners: readonly Point[]): Point[] {
  const { minX, minY, maxX, maxY } = grown(boxAround(corners), ROOM_M);
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

function breachOf(terms: SearchTerms, line: BentLine): number {
  let sum = 0;
  for (let k = 0; k < legCount(line); k++) {
    const n = beside(line, k, 1);
    sum += legBreach(terms, line.x[k]!, line.y[k]!, line.x[n]!, line.y[n]!);
  }
  return sum;
}
