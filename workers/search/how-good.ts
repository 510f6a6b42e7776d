import { deadlineIn } from "./deadline.ts";
import { estimateBest } from "./estimate-best.ts";
import { proveBest } from "./prove-best.ts";
import { searchTerms } from "./search-terms.ts";
import type { BestPossible, FoundRing, SearchOptions, SearchRequest, SearchStep } from "./types.ts";

/** Time for judging a line, milliseconds. */
export const JUDGING_CAP_MS = { estimate: 1500, proof: 4000 } as const;
/** Share of the time for a proof; the rest is for the estimate, should there be none. */
const PROOF_SHARE = 0.75;
/** A proof looser than this says less than the estimate (lines over the limit, searches cut short). */
const WORTH_SHOWING = 0.25;

/**
 * How far one found ring may be from the best there is round the same structures in the request's window.
 * @param wanted an estimate in tenths of a second, or a proof in seconds; where no proof worth
 *   showing can be had the estimate is given, and says that it is one
 * @returns null when there was no time for either
 */
export function* howGood(
  request: SearchRequest,
  ring: FoundRing,
  wanted: BestPossible["kind"],
  options: SearchOptions = {},
): Generator<SearchStep, BestPossible | null> {
  const deadline = deadlineIn(options.timeCapMs ?? JUDGING_CAP_MS[wanted], options.now);
  const terms = searchTerms(request);
  const { encloses, priceM3 } = ring;
  if (wanted === "proof") {
    const { over } = deadline.part(PROOF_SHARE);
    const proof = yield* proveBest(terms, encloses, priceM3, over);
    if (proof && proof.gapShare <= WORTH_SHOWING) return proof;
  }
  return yield* estimateBest(terms, encloses, priceM3, deadline.over);
}
