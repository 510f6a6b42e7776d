import { timeOf } from "../defaults.ts";
import { PYRAMID } from "../sections.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { hourWords } from "../time/clock-words.ts";
import type { AheadVerdict, LineTime } from "../time/types.ts";
import { mostWork } from "../time/ways-out.ts";
import { formatCount, formatHours } from "../units.ts";
import { crewInputWords } from "../words/crew.ts";
import { type Finding, ofWholePlan, type Rule } from "./rule.ts";
import { elevationWords, lengthWords, stationWords } from "./words.ts";

const SAME_M = 0.01;

/** Whether the levee is finished before the river arrives. */
export const inTime: Rule = {
  id: "time",
  rule: "The crest stays above the water by the margin at every hour of the forecast.",
  source: "THW-E, derived from ERDC (rates); the margin is judgement",
  find: ({ time, totals, cuts, levelDoubt }) => {
    const isOfBagsAlone = cuts.reaches.every(({ section }) => section === PYRAMID);
    if (!time || levelDoubt || totals.builtLengthM === 0) return [];
    if (time.missing.length > 0) return withoutCrew(time);
    if (time.verdicts.length === 0) return withoutForecast(time);
    const verdict = (band: string, pace: string) =>
      time.verdicts.find((each) => each.band === band && each.pace === pace);
    const likely = verdict("likely", "slow")!;
    if (!likely.ahead) return late(time, isOfBagsAlone, likely, verdict("likely", "fast")!);
    const high = verdict("high", "slow");
    if (high && !high.ahead)
      return late(time, isOfBagsAlone, high, high, "If the high forecast comes true, ");
    if (time.finishSlowH === null) return unfinished(time);
    if (time.inTime === null) return [];
    return time.finishSlowH > time.forecastEndH! ? afterForecast(time) : [];
  },
};

function withoutCrew({ missing, bags }: LineTime): Finding[] {
  const words = crewInputWords(missing);
  return ofWholePlan(
    "caution",
    `Whether there is time for the ${formatCount(bags)} bags is not known: nobody has entered ${words}.`,
    `Type ${words} in Time.`,
  );
}

function withoutForecast({ finishSlowH, finishFastH, bags, forecastEndH }: LineTime): Finding[] {
  const hours =
    finishSlowH === null || finishFastH === null
      ? "more than a year"
      : `${formatHours(finishFastH)} to ${formatHours(finishSlowH)}`;
  if (forecastEndH !== null) {
    return ofWholePlan(
      "caution",
      `The forecast is over before the work starts, so nothing says whether there is time. The ${formatCount(bags)} bags take ${hours}, nights and setting up included.`,
      "Put in a newer forecast, or check the start of work.",
    );
  }
  return ofWholePlan(
    "note",
    `No forecast over time is given, so nothing says whether there is time. The ${formatCount(bags)} bags take ${hours}, nights and setting up included.`,
    "Put in the forecast, time and stage, in Time.",
  );
}

function unfinished({ bags, crew }: LineTime): Finding[] {
  return ofWholePlan(
    "stop",
    `The ${formatCount(bags)} bags are not laid within a year by ${formatCount(crew!.people)} people in these working hours.`,
    "Check the hours of work, the shifts and the number of people.",
  );
}

function afterForecast({ finishSlowH, forecastEndH }: LineTime): Finding[] {
  return ofWholePlan(
    "caution",
    `The work takes ${formatHours(finishSlowH!)} and the forecast ends after ${formatHours(forecastEndH!)}: up to then the crest keeps ahead, and nothing is known of later.`,
    "Put in a longer forecast, or more people, so that the end of the work lies within it.",
  );
}

function late(
  time: LineTime,
  isOfBagsAlone: boolean,
  verdict: AheadVerdict,
  fast: AheadVerdict,
  when = "",
): Finding[] {
  const { behindFromH, behindAtM, leastSpareM } = verdict;
  const isHigh = when !== "";
  const gravest = isHigh || fast.ahead ? "caution" : "stop";
  const opening = isHigh
    ? `${when}this cannot be done in time`
    : fast.ahead
      ? "This can be done in time only at the fast pace"
      : "This cannot be done in time";
  return [
    {
      severity: gravest,
      stretch: null,
      chainageM: behindAtM ?? 0,
      sample: null,
      message: `${opening}: from ${hourWords(time.startAt, behindFromH!, { long: true })} the crest is less than ${lengthWords(time.marginM)} above the water, at worst ${lengthWords(-leastSpareM)} short near ${stationWords(behindAtM ?? 0)}.`,
      remedy: `${waysWords(time, isOfBagsAlone)} Less freeboard is not a way out.`,
    },
  ];
}

function waysWords(time: LineTime, isOfBagsAlone: boolean): string {
  if (!time.waysOut) return "More people, a start sooner, a cheaper alternative or a smaller ring.";
  const { people, peopleDayAndNight } = time.waysOut;
  const most = mostWork(time, isOfBagsAlone);
  const found = [
    people === null ? null : `${formatCount(people)} people instead`,
    peopleDayAndNight === null || peopleDayAndNight >= (people ?? Number.POSITIVE_INFINITY)
      ? null
      : `${formatCount(peopleDayAndNight)} people at work at every hour, day and night under lights, with as many again for every further shift`,
    most === null
      ? null
      : `a cheaper alternative or a smaller ring of at most ${most.figure} ${most.of}`,
  ].filter((words) => words !== null);
  if (found.length === 0) {
    return "No number of people is enough for this line: start sooner, choose a line on higher ground, or prepare to leave.";
  }
  return `What would make it possible: ${found.join("; or ")}.`;
}

/** Crest of the forecast against the water the plan is sized for. */
export const forecastCrest: Rule = {
  id: "forecast-crest",
  rule: "The plan is sized for the crest of its own forecast.",
  source: "NDSU-11 (1 ft above the projected crest)",
  find: ({ time, plan }) => {
    const crestOf = (band: string) => time?.crests.find((each) => each.band === band);
    const likely = crestOf("likely");
    if (!likely) return [];
    const designM = waterElevationAtGauge(plan.water);
    const { freeboardM } = plan.water;
    if (likely.riseM > SAME_M) {
      return ofWholePlan(
        likely.riseM > freeboardM ? "stop" : "caution",
        `The forecast crests at ${elevationWords(likely.waterM)}, ${lengthWords(likely.riseM)} above the water the line is sized for, ${elevationWords(designM)}.`,
        "Size the line for the forecast's crest, in Water.",
      );
    }
    const high = crestOf("high");
    const isHighOver = high !== undefined && high.riseM > freeboardM + SAME_M;
    if (!isHighOver && time!.firstWetH === null && (time!.forecastEndH ?? 0) > 0) {
      return ofWholePlan(
        "caution",
        `The forecast stays below all ground under the line: its highest water is ${elevationWords(likely.waterM)}, ${lengthWords(-likely.riseM)} under the water the line is sized for.`,
        "Check that stage and elevation, the unit and the gauge zero are those of the forecast, and that it goes on to the crest.",
      );
    }
    if (!isHighOver) return [];
    return ofWholePlan(
      "caution",
      `If the high forecast comes true, the river crests at ${elevationWords(high.waterM)}, ${lengthWords(high.riseM - freeboardM)} over the levee.`,
      "Decide now whether to build for the high forecast, and at which stage people leave.",
    );
  },
};

/** Stage without the gauge's zero. */
export const forecastZero: Rule = {
  id: "forecast-zero",
  rule: "A forecast by stage stands on the gauge zero that the water stands on.",
  source: "NWS-D, USGS-D",
  find: ({ plan }) => {
    if (timeOf(plan).forecast?.levels !== "stage" || plan.water.by === "stage") return [];
    return ofWholePlan(
      "caution",
      `The forecast is by stage while the water is given as an elevation: it is set on the gauge zero of ${elevationWords(plan.water.gaugeZeroM)}.`,
      "Check the gauge zero in Water, or give the water by stage.",
    );
  },
};
