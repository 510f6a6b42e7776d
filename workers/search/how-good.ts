import { estimateBest } from "./estimate-best.ts";
import { proveBest } from "./prove-best.ts";
import { siteTerms } from "./site-terms.ts";
import type { BestPossible, FoundRing, SearchOptions, SearchStep, SiteRequest } from "./types.ts";

const ESTIMATE_CAP_MS = 1500;
const PROOF_CAP_MS = 4000;
/** A proof looser than this says less than the estimate (lines over the limit, searches cut short). */
const WORTH_SHOWING = 0.25;

/**
 * How far one found ring may be from the best there is round the same structures in the request's window.
 * @param wanted an estimate in tenths of a second, or a proof in seconds; where no proof worth
 *   showing can be had the estimate is given, and says that it is one
 */
export function* howGood(
  request: SiteRequest,
  ring: FoundRing,
  wanted: BestPossible["kind"],
  options: SearchOptions = {},
): Generator<SearchStep, BestPossible> {
  const now = options.now ?? (() => performance.now());
  const cap = options.timeCapMs ?? (wanted === "proof" ? PROOF_CAP_MS : ESTIMATE_CAP_MS);
  const endsAt = now() + cap;
  const outOfTime = () => now() > endsAt;
  const terms = siteTerms(request);
  if (wanted === "proof") {
    const proof = yield* proveBest(terms, ring.encloses, ring.priceM3, outOfTime);
    if (proof && proof.gapShare <= WORTH_SHOWING) return proof;
  }
  return yield* estimateBest(terms, ring.encloses, ring.priceM3, outOfTime);
}
