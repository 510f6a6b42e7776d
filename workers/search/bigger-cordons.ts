import { type Effort, findRing } from "./find-ring.ts";
import { finishRing } from "./finish-ring.ts";
import { partOf } from "./progress.ts";
import { preparedGround } from "./site-ground.ts";
import { CORNER_SHARE, LATTICE_SHARE } from "./site-ring.ts";
import { grown, siteTerms, windowBox } from "./site-terms.ts";
import type { FoundRing, SearchOptions, SearchStep, SiteRequest } from "./types.ts";

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
const TIME_CAP_MS = 4000;
/** Ground prepared beyond the widest window, metres. */
const GROUND_MARGIN_M = 20;
/** A ring is another one when it saves at least this share. */
const WORTH_SHARE = 0.002;

/**
 * The best ring, round all chosen structures together, in one window after the other, so that a long loop
 * over far high ground is a choice and not a surprise. Each window holds the one before: no ring is dearer
 * than the last.
 */
export function* biggerCordons(
  request: SiteRequest,
  options: SearchOptions = {},
  reachesM: readonly number[] = CORDON_REACHES_M,
): Generator<SearchStep, Cordon[]> {
  const now = options.now ?? (() => performance.now());
  const capMs = options.timeCapMs ?? TIME_CAP_MS;
  const endsAt = now() + capMs;
  const latticesEndAt = now() + LATTICE_SHARE * capMs;
  const outOfTime = () => now() > endsAt;
  const effort: Effort = {
    line: { cornerShare: CORNER_SHARE, maxCorners: request.rule.maxCorners, outOfTime },
    latticesLate: () => now() > latticesEndAt,
    outOfTime,
    wholeWindow: true,
  };
  const widest = windowBox({ reachM: Math.max(...reachesM) }, request.structures);
  const ground = preparedGround(request.ground, grown(widest, GROUND_MARGIN_M));
  const group = request.structures.map((_, k) => k);
  const cordons: Cordon[] = [];
  let best: FoundRing | null = null;
  let firstM3 = 0;
  for (const [k, reachM] of reachesM.entries()) {
    yield { share: k / reachesM.length, doing: `Searching within ${reachM} m` };
    const terms = siteTerms({ ...request, ground, window: { reachM } });
    const steps = findRing(terms, group, effort);
    const search = yield* partOf(steps, k / reachesM.length, (k + 1) / reachesM.length);
    const found = search.ring ? finishRing(terms, search.ring) : null;
    const better = found && (!best || found.priceM3 < best.priceM3 * (1 - WORTH_SHARE));
    if (better && !best) firstM3 = found.figures.volumeM3;
    if (better) best = found;
    cordons.push({
      reachM,
      ring: best,
      savedM3: best ? firstM3 - best.figures.volumeM3 : 0,
      sameAsBefore: best !== null && !better,
      cutShort: search.cutShort,
    });
  }
  return cordons;
}
