import { asksTooMuch } from "../search/check-request.ts";
import { type Effort, findRing } from "../search/find-ring.ts";
import { finishRing } from "../search/finish-ring.ts";
import { CORNER_SHARE } from "../search/site-ring.ts";
import { siteTerms } from "../search/site-terms.ts";
import type { FoundRing, SearchStep, SiteRequest } from "../search/types.ts";
import { whyNone } from "../search/why-none.ts";

/** One ring round all structures of a request. */
export interface TogetherRing {
  readonly rings: readonly [FoundRing];
  readonly cutShort: boolean;
  readonly notes: readonly [];
}

/**
 * The best single ring round all structures of a request: no other grouping is looked at, so that it can be
 * had while something is dragged.
 * @throws Refusal with a code `site/...` when there is none
 */
export function* ringTogether(
  request: SiteRequest,
  { timeCapMs }: { readonly timeCapMs: number },
): Generator<SearchStep, TogetherRing> {
  const refused = asksTooMuch(request);
  if (refused) throw refused;
  const endsAt = performance.now() + timeCapMs;
  const outOfTime = () => performance.now() > endsAt;
  const { maxCorners } = request.rule;
  const effort: Effort = {
    line: { cornerShare: CORNER_SHARE, maxCorners, outOfTime },
    outOfTime,
    wholeWindow: true,
  };
  const terms = siteTerms(request);
  const group = request.structures.map((_, k) => k);
  const search = yield* findRing(terms, group, effort);
  if (!search.ring) throw whyNone(search.widest, terms.obstacles[0]!.shape.inside);
  const ring = finishRing(terms, search.ring);
  const cutShort = search.cutShort || outOfTime();
  return { rings: [ring], cutShort, notes: [] };
}
