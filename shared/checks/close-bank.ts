import { closeBanks } from "../close-banks.ts";
import { accuracyOf } from "../ground-accuracy.ts";
import type { Finding, Rule } from "./rule.ts";
import { distanceWords, lengthWords, stationWords } from "./words.ts";

/** Natural ground that is high enough by less than the ground is known to. */
export const closeBank: Rule = {
  id: "close-bank",
  rule: "Ground that takes the place of levee, or that a line ends on, is above the top of levee by more than the accuracy of the ground.",
  source: "judgement",
  find: ({ plan, line, trace, cuts, cellM }) => {
    const { rmseM } = accuracyOf(plan.ground, cellM);
    const banks = closeBanks(trace, cuts, line.closed, rmseM, plan.practice.stationIntervalM);
    return banks.map(({ fromM, toM, sample, aboveM, isEnd }): Finding => {
      const where =
        toM - fromM < 1
          ? stationWords((fromM + toM) / 2)
          : `${stationWords(fromM)} to ${stationWords(toM)}`;
      const what = isEnd ? "the ground that the line ends on" : "natural ground in place of levee";
      return {
        severity: "caution",
        stretch: null,
        chainageM: trace.chainageM[sample]!,
        sample,
        message: `${where}: ${what} is above the top of levee by only ${lengthWords(aboveM)}, less than the accuracy of the ground, ±${lengthWords(rmseM)}.`,
        remedy: isEnd
          ? "Survey the ground elevations there, or lead this end on to higher ground."
          : `Survey the ground elevations there, and have bags for ${distanceWords(toM - fromM)} more.`,
      };
    });
  },
};
