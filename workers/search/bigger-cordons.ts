import { deadlineIn } from "./deadline.ts";
import { findRing } from "./find-ring.ts";
import { finishRing } from "./finish-ring.ts";
import { partOf } from "./progress.ts";
import { preparedGround } from "./search-ground.ts";
import { CORNER_SHARE } from "./search-ring.ts";
import { grown, searchTerms, windowBox } from "./search-terms.ts";
import type { FoundRing, SearchOptions, SearchRequest, SearchStep } from "./types.ts";

/** The best ring of one search window. */
export interface Cordon {
  readonly reachM: number;
  /** Null when no ring fits this window. */
  readonly ring: FoundRing | null;
  /** Placed volume saved against the smallest window that has a ring, m3. */
  readonly savedM3: number;
  /** True when a smaller window already gave this ring. */
  readonly sameAsBefore: boolean;
  readonly cutShort: boolean;
}

const CORDON_REACHES_M: readonly number[] = [15, 30, 60, 120, 240];
/** Time for all windows together unless told otherwise, milliseconds. */
export const CORDONS_CAP_MS = 4000;
/** Ground prepared beyond the widest window, metres. */
const GROUND_MARGIN_M = 20;
/** A ring is another one when it saves at least this share. */
const WORTH_SHARE = 0.002;
/** How far one of the windows still to be searched may use more than its share of the time. */
const FAIR = 2;

/**
 * The best ring, round all chosen structures together, in one window after the other, so that a long loop
 * over far high ground is a choice and not a surprise. Each window holds the one before: no ring is dearer
 * than the last.
 */
export function* biggerCordons(
  request: SearchRequest,
  options: SearchOptions = {},
  reachesM: readonly number[] = CORDON_REACHES_M,
): Generator<SearchStep, Cordon[]> {
  const deadline = deadlineIn(options.timeCapMs ?? CORDONS_CAP_MS, options.now);
  const line = { cornerShare: CORNER_SHARE, maxCorners: request.rule.maxCorners };
  const widest = windowBox({ reachM: Math.max(...reachesM) }, request.structures);
  const ground = preparedGround(request.ground, grown(widest, GROUND_MARGIN_M));
  const group = request.structures.map((_, k) => k);
  const cordons: Cordon[] = [];
  let best: FoundRing | null = null;
  let firstM3 = 0;
  for (const [k, reachM] of reachesM.entries()) {
    yield { share: k / reachesM.length, doing: `Searching cordon ${k + 1} of ${reachesM.length}` };
    if (deadline.over() && (best || deadline.givenUp())) {
      cordons.push({ ...nothingNew(best, firstM3), reachM, cutShort: true });
      continue;
    }
    const terms = searchTerms({ ...request, ground, window: { reachM } });
    const part = deadline.part(Math.min(1, FAIR / (reachesM.length - k)));
    const { beat } = options;
    const steps = findRing(terms, group, { line, deadline: part, wholeWindow: true, beat });
    const done = (k + 1) / reachesM.length;
    const search = yield* partOf(steps, k / reachesM.length, done);
    const finish = search.ring && finishRing(terms, search.ring, deadline.givenUp);
    const found = finish && (yield* partOf(finish, done, done));
    const better = found && (!best || found.priceM3 < best.priceM3 * (1 - WORTH_SHARE));
    if (better && !best) firstM3 = found.figures.volumeM3;
    if (better) best = found;
    const same = nothingNew(best, firstM3);
    const sameAsBefore = same.sameAsBefore && !better;
    cordons.push({ ...same, reachM, sameAsBefore, cutShort: search.cutShort });
  }
  return cordons;
}

/** A wider window that adds nothing to the best ring so far. */
function nothingNew(ring: FoundRing | null, firstM3: number) {
  const savedM3 = ring ? firstM3 - ring.figures.volumeM3 : 0;
  return { ring, savedM3, sameAsBefore: ring !== null };
}
