import { closeBanks } from "../close-banks.ts";
import { accuracyOf } from "../ground-accuracy.ts";
import type { Finding, Rule } from "./rule.ts";
import { atStation, type Where } from "./where.ts";

/** How far a bank is above the top of levee, and the accuracy of the ground (RMSE). Metres. */
export interface CloseBankFinding {
  readonly kind: "close-bank" | "close-end";
  readonly aboveM: number;
  readonly rmseM: number;
  readonly lengthM: number;
}

/** Natural ground that is high enough by less than the ground is known to. */
export const closeBank: Rule = {
  id: "close-bank",
  find: ({ plan, line, samples, cuts, cellM }) => {
    const { rmseM } = accuracyOf(plan.ground, cellM);
    const banks = closeBanks(samples, cuts, line.closed, rmseM, plan.practice.stationIntervalM);
    return banks.map(({ fromM, toM, sample, aboveM, isEnd }): Finding => {
      const lengthM = toM - fromM;
      const where: Where =
        lengthM < 1
          ? atStation((fromM + toM) / 2)
          : { at: "stretch", fromM, toM, overClosing: false };
      return {
        severity: "caution",
        finding: { kind: isEnd ? "close-end" : "close-bank", aboveM, rmseM, lengthM },
        ...{ where, stretch: null, chainageM: samples.chainageM[sample]!, sample },
      };
    });
  },
};
