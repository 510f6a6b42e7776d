import { timeOf } from "../defaults.ts";
import { PYRAMID } from "../sections.ts";
import { waterElevationAtGauge } from "../stage.ts";
import type { CrewInput } from "../time/crew-inputs.ts";
import { lacksGaugeZero } from "../time/hydrograph.ts";
import { isAllOnHold } from "../time/time-verdict.ts";
import type { AheadVerdict, LineTime, WaysOut } from "../time/types.ts";
import { type MostWork, mostWork } from "../time/ways-out.ts";
import { type Finding, ofWholePlan, type Rule } from "./rule.ts";

const SAME_M = 0.01;

/** Hours are counted from the start of work, nights and setting up included; metres. */
export type TimeFinding =
  | {
      readonly kind: "crew-not-entered";
      readonly bags: number;
      readonly missing: readonly CrewInput[];
    }
  | {
      /** No forecast over time, or one that is over before the work starts. */
      readonly kind: "no-forecast" | "forecast-over";
      readonly bags: number;
      /** At the fast and at the slow pace; null where it takes over a year. */
      readonly fastH: number | null;
      readonly slowH: number | null;
    }
  | { readonly kind: "over-a-year"; readonly bags: number; readonly people: number }
  | { readonly kind: "ends-after-forecast"; readonly slowH: number; readonly forecastEndH: number }
  | {
      readonly kind: "late";
      /** By the likely forecast at both paces, at the slow pace alone, or by the high forecast. */
      readonly by: "likely" | "slow-pace" | "high-forecast";
      readonly startAt: string | null;
      readonly behindFromH: number;
      readonly behindAtM: number;
      readonly marginM: number;
      readonly shortM: number;
      /** Null where what would make it possible is not known. */
      readonly waysOut: WaysOut | null;
      readonly mostWork: MostWork | null;
    }
  | {
      readonly kind: "forecast-crest";
      readonly crestM: number;
      readonly sizedForM: number;
      /** Of the crest above the sized-for water. */
      readonly riseM: number;
    }
  | {
      readonly kind: "forecast-below-ground";
      readonly crestM: number;
      /** Of the crest below the sized-for water. */
      readonly belowM: number;
    }
  | { readonly kind: "high-forecast"; readonly crestM: number; readonly overTopM: number }
  /** Null where no gauge zero is given. */
  | { readonly kind: "forecast-zero"; readonly gaugeZeroM: number | null };

/** Whether the levee is finished before the river arrives. */
export const inTime: Rule = {
  id: "time",
  find: ({ time, totals, cuts, levelDoubt }) => {
    const isOfBagsAlone = cuts.reaches.every(({ section }) => section === PYRAMID);
    if (!time || levelDoubt || totals.builtLengthM === 0) return [];
    const { bags, missing, finishSlowH: slowH, finishFastH: fastH, forecastEndH } = time;
    if (missing.length > 0) {
      return ofWholePlan("caution", { kind: "crew-not-entered", bags, missing });
    }
    if (time.lacksGaugeZero || isAllOnHold(time)) return [];
    if (time.verdicts.length === 0) {
      return forecastEndH === null
        ? ofWholePlan("note", { kind: "no-forecast", bags, fastH, slowH })
        : ofWholePlan("caution", { kind: "forecast-over", bags, fastH, slowH });
    }
    const verdict = (band: string, pace: string) =>
      time.verdicts.find((each) => each.band === band && each.pace === pace);
    const likely = verdict("likely", "slow")!;
    if (!likely.ahead) {
      const by = verdict("likely", "fast")!.ahead ? "slow-pace" : "likely";
      return late(time, isOfBagsAlone, likely, by);
    }
    const high = verdict("high", "slow");
    if (high && !high.ahead) return late(time, isOfBagsAlone, high, "high-forecast");
    if (slowH === null) {
      return ofWholePlan("stop", { kind: "over-a-year", bags, people: time.crew!.people });
    }
    if (time.inTime === null || slowH <= forecastEndH!) return [];
    const finding = { kind: "ends-after-forecast", slowH, forecastEndH: forecastEndH! } as const;
    return ofWholePlan("caution", finding);
  },
};

function late(
  time: LineTime,
  isOfBagsAlone: boolean,
  { behindFromH, behindAtM, leastSpareM }: AheadVerdict,
  by: "likely" | "slow-pace" | "high-forecast",
): Finding[] {
  const atM = behindAtM ?? 0;
  const [found] = ofWholePlan(by === "likely" ? "stop" : "caution", {
    kind: "late",
    by,
    ...{ startAt: time.startAt, marginM: time.marginM, waysOut: time.waysOut },
    ...{ behindFromH: behindFromH!, behindAtM: atM, shortM: -leastSpareM },
    mostWork: mostWork(time, isOfBagsAlone),
  });
  return [{ ...found!, chainageM: atM }];
}

/** Crest of the forecast against the water the plan is sized for. */
export const forecastCrest: Rule = {
  id: "forecast-crest",
  find: ({ time, plan, levelDoubt }) => {
    const crestOf = (band: string) => time?.crests.find((each) => each.band === band);
    const likely = crestOf("likely");
    if (!likely) return [];
    const { waterM: crestM, riseM } = likely;
    const { freeboardM } = plan.water;
    if (riseM > SAME_M) {
      const sizedForM = waterElevationAtGauge(plan.water);
      const finding = { kind: "forecast-crest", crestM, sizedForM, riseM } as const;
      return ofWholePlan(riseM > freeboardM ? "stop" : "caution", finding);
    }
    const high = crestOf("high");
    const isHighOver = high !== undefined && high.riseM > freeboardM + SAME_M;
    if (!isHighOver && !levelDoubt && time!.firstWetH === null && (time!.forecastEndH ?? 0) > 0) {
      return ofWholePlan("caution", { kind: "forecast-below-ground", crestM, belowM: -riseM });
    }
    if (!isHighOver) return [];
    const overTopM = high.riseM - freeboardM;
    return ofWholePlan("caution", { kind: "high-forecast", crestM: high.waterM, overTopM });
  },
};

/** Stage without the gauge's zero. */
export const forecastZero: Rule = {
  id: "forecast-zero",
  find: ({ plan }) => {
    const { forecast } = timeOf(plan);
    if (forecast?.levels !== "stage" || plan.water.by === "stage") return [];
    const gaugeZeroM = lacksGaugeZero(plan, forecast) ? null : plan.water.gaugeZeroM;
    return ofWholePlan("caution", { kind: "forecast-zero", gaugeZeroM });
  },
};
