import type { Standing, Verdict, Weakest } from "./types.ts";

/** How a whole line stands: the graver of its two verdicts, and the place it rests on. */
export interface LineVerdict {
  readonly verdict: Verdict;
  readonly by: "sliding" | "overturning";
  readonly weakest: Weakest;
}

/** How grave a verdict is; more is worse. */
export const GRAVENESS: Readonly<Record<Verdict, number>> = {
  "meets-required": 0,
  doubtful: 1,
  "below-required": 2,
};

/** The graver of sliding and overturning; of two equal ones, that with less of what is asked. */
export function lineVerdict({ sliding, overturning }: Standing): LineVerdict {
  const graver = GRAVENESS[overturning.verdict] - GRAVENESS[sliding.verdict];
  const isTurning = graver > 0 || (graver === 0 && shareOf(overturning) < shareOf(sliding));
  return isTurning
    ? { verdict: overturning.verdict, by: "overturning", weakest: overturning }
    : { verdict: sliding.verdict, by: "sliding", weakest: sliding };
}

function shareOf({ factor, required }: Weakest): number {
  return factor.low / required;
}
