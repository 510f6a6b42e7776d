import { type Refusal, refusal } from "../../shared/failure.ts";
import type { SearchNote } from "../../shared/search-types.ts";
import { asksTooMuch } from "./check-request.ts";
import { COMPARED_EXACTLY, chooseGroups, type Grouping } from "./choose-groups.ts";
import { deadlineIn } from "./deadline.ts";
import type { Effort, GroupRing } from "./find-ring.ts";
import { driven } from "./progress.ts";
import { type SearchTerms, searchTerms } from "./search-terms.ts";
import type { SearchOptions, SearchRequest, SearchResult, SearchStep } from "./types.ts";
import { whyNone } from "./why-none.ts";

/** A corner must save this share of its ring's price. */
export const CORNER_SHARE = 0.001;
/** A search ends after this long unless told otherwise, and says so, milliseconds. */
const TIME_CAP_MS = 2000;
const NEGLIGIBLE_M = 0.005;

/**
 * The closed line round the chosen structures that needs the least placed volume, or several lines where
 * that takes less.
 * @throws Refusal with a code `site/...` when no ring is possible: what stands in the way, and what to do
 */
export function searchRing(request: SearchRequest, options: SearchOptions = {}): SearchResult {
  const steps = ringSteps(request, options);
  return driven(steps);
}

/**
 * The same search as a sequence of steps, each a few tens of milliseconds at most on usual sites, so that
 * whoever drives it can report progress, take messages and give up between them.
 */
export function* ringSteps(
  request: SearchRequest,
  options: SearchOptions = {},
): Generator<SearchStep, SearchResult> {
  const now = options.now ?? (() => performance.now());
  const startedAt = now();
  const capMs = options.timeCapMs ?? TIME_CAP_MS;
  const deadline = deadlineIn(capMs, now);
  const refused = asksTooMuch(request);
  if (refused) throw refused;
  const terms = searchTerms(request);
  const effort: Effort = {
    line: { cornerShare: CORNER_SHARE, maxCorners: request.rule.maxCorners },
    deadline,
    wholeWindow: !options.nearOnly,
    beat: options.beat,
  };
  const grouping = yield* chooseGroups(terms, effort);
  if (grouping.without) throw reasonFor(terms, grouping.without, capMs);
  return summedUp(grouping, deadline.over(), now() - startedAt);
}

function reasonFor(
  terms: SearchTerms,
  { structure, search }: NonNullable<Grouping["without"]>,
  capMs: number,
): Refusal {
  if (search?.closed && !search.cutShort) {
    return whyNone(search.closed, terms.obstacles[structure]!.shape.inside);
  }
  return noRingInTime(capMs, terms.request.structures.length);
}

/** Said when the time is up before there is any ring: one may exist. */
export function noRingInTime(capMs: number, buildings: number): Refusal {
  return refusal("site/out-of-time", { capMs, buildings });
}

function summedUp(
  { rings, searches, exact, cutShort: leftOut }: Grouping,
  late: boolean,
  milliseconds: number,
): SearchResult {
  const sum = (pick: (search: GroupRing) => number) =>
    searches.reduce((s, each) => s + pick(each), 0);
  const most = (pick: (search: GroupRing) => number) =>
    searches.reduce((s, each) => Math.max(s, pick(each)), 0);
  const total = (pick: (ring: (typeof rings)[number]) => number) =>
    rings.reduce((s, ring) => s + pick(ring), 0);
  const cutShort = late || leftOut || searches.some((each) => each.cutShort);
  const overLimit = rings.some((ring) => ring.overLimit);
  const notes: SearchNote[] = [];
  if (cutShort) {
    notes.push({ kind: "cut-short" });
  }
  if (overLimit) {
    notes.push({ kind: "over-limit" });
  }
  if (!exact) {
    notes.push({ kind: "groups-not-compared", most: COMPARED_EXACTLY });
  }
  const short = rings.reduce((least, ring) => Math.min(least, ring.spareClearanceM), 0);
  if (short < -NEGLIGIBLE_M) {
    notes.push({ kind: "toe-too-close", byM: -short });
  }
  const blindM = total((ring) => ring.blindM);
  if (blindM > 0) {
    notes.push({ kind: "no-data", lengthM: blindM });
  }
  return {
    rings,
    priceM3: total((ring) => ring.priceM3),
    volumeM3: total((ring) => ring.figures.volumeM3),
    lengthM: total((ring) => ring.figures.lengthM),
    greatestHeightM: rings.reduce((h, ring) => Math.max(h, ring.figures.greatestHeightM), 0),
    overLimit,
    cutShort,
    notes,
    statistics: {
      runs: sum((each) => each.runs),
      settled: sum((each) => each.settled),
      cells: most((each) => each.cells),
      bytes: most((each) => each.bytes),
      milliseconds,
    },
  };
}
