import { FOOT_M } from "../../constants.ts";
import type { WaysOut } from "../../time/types.ts";
import type { MostWork } from "../../time/ways-out.ts";
import { formatCount, formatHours, formatShare } from "../../units.ts";
import { hourWords } from "../clock.ts";
import { crewInputWords } from "../crew.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

const LATE_BY = {
  likely: "Late",
  "slow-pace": "Late at slow pace",
  "high-forecast": "Late if the river runs high",
} as const;

/** `14.5 to 27 h`, or that it takes over a year. */
function hoursWords(fastH: number | null, slowH: number | null): string {
  return fastH === null || slowH === null
    ? "more than a year"
    : `${formatHours(fastH)} to ${formatHours(slowH)}`;
}

/** `13,900 bags on ground like this`. */
export function mostWorkWords(most: MostWork): string {
  return most.of === "bags"
    ? `${formatCount(most.bags)} bags on ground like this`
    : `${formatShare(most.share)} of the work that bags, sand and earth are now`;
}

/** ` (any sequence needs 62 at least; 75 if what is on HOLD is built, too)`: beside the people that a sequence needs. */
export function besidePeople({ peopleAtLeast, peopleWithHold }: WaysOut): string {
  const notes = [
    peopleAtLeast === null ? null : `any sequence needs ${formatCount(peopleAtLeast)} at least`,
    peopleWithHold === null
      ? null
      : `${formatCount(peopleWithHold)} if what is on HOLD is built, too`,
  ].filter((words) => words !== null);
  return notes.length === 0 ? "" : ` (${notes.join("; ")})`;
}

/** What would make it possible, as a sentence. Less freeboard is never in it. */
function waysOutWords(waysOut: WaysOut | null, most: MostWork | null): string {
  if (!waysOut) return "More people, an earlier start, a line of fewer bags or a smaller ring.";
  const { people, peopleDayAndNight } = waysOut;
  const ways = [
    people === null ? null : `${formatCount(people)} people instead${besidePeople(waysOut)}`,
    peopleDayAndNight === null || peopleDayAndNight >= (people ?? Number.POSITIVE_INFINITY)
      ? null
      : `${formatCount(peopleDayAndNight)} people working at every hour, day and night under lights, with as many again for every further shift`,
    most === null ? null : `a line or a smaller ring of at most ${mostWorkWords(most)}`,
  ].filter((words) => words !== null);
  return ways.length === 0
    ? "No number of people is enough for this line: start sooner, choose a line on higher ground, or prepare to leave."
    : `What would make it possible: ${ways.join("; or ")}.`;
}

export const TIME_TEXT: TextOf<
  | ("crew-not-entered" | "no-forecast" | "forecast-over" | "over-a-year" | "ends-after-forecast")
  | ("late" | "forecast-crest" | "forecast-below-ground" | "high-forecast" | "forecast-zero")
> = {
  "crew-not-entered": ({ bags, missing }) => ({
    what: `Whether there is time for the ${formatCount(bags)} bags is not known: nobody has entered ${crewInputWords(missing)}.`,
    remedy: `Type ${crewInputWords(missing)} in Crew and time.`,
  }),
  "no-forecast": ({ bags, fastH, slowH }) => ({
    what: `No forecast over time is given, so whether there is time is not known. The ${formatCount(bags)} bags take ${hoursWords(fastH, slowH)}, nights and setting up included.`,
    remedy: "Put in the forecast, time and stage, in Crew and time.",
  }),
  "forecast-over": ({ bags, fastH, slowH }) => ({
    what: `The forecast is over before the work starts, so whether there is time is not known. The ${formatCount(bags)} bags take ${hoursWords(fastH, slowH)}, nights and setting up included.`,
    remedy: "Put in a newer forecast, or check the start of work.",
  }),
  "over-a-year": ({ bags, people }) => ({
    what: `${formatCount(people)} people do not lay the ${formatCount(bags)} bags within a year in these working hours.`,
    remedy: "Check the hours of work, the shifts and the number of people.",
  }),
  "ends-after-forecast": ({ slowH, forecastEndH }) => ({
    what: `The work takes ${formatHours(slowH)} and the forecast ends after ${formatHours(forecastEndH)}: up to then the top of levee is ahead of the water; after that it is not known.`,
    remedy: "Put in a longer forecast, or more people, so that the end of the work lies within it.",
  }),
  late: ({ by, startAt, behindFromH, behindAtM, marginM, shortM, waysOut, mostWork }, u) => ({
    what: `${LATE_BY[by]}: from ${hourWords(startAt, behindFromH, u.system, { long: true })} the top of levee is less than ${u.length(marginM)} above the water, at worst ${u.length(shortM)} short near ${u.station(behindAtM)}.`,
    remedy: `${waysOutWords(waysOut, mostWork)} Do not save time on freeboard.`,
  }),
  "forecast-crest": ({ crestM, sizedForM, riseM }, u) => ({
    what: `The forecast crest is ${u.elevation(crestM)}, ${u.length(riseM)} above the sized-for water, ${u.elevation(sizedForM)}.`,
    remedy: "Size the line for the forecast crest, in Water.",
  }),
  "forecast-below-ground": ({ crestM, belowM }, u) => ({
    what: `The forecast stays below all ground under the line: its crest is ${u.elevation(crestM)}, ${u.length(belowM)} under the sized-for water.`,
    remedy:
      "Check that stage and elevation, the unit and the gauge zero are those of the forecast, and that it goes on past its crest.",
  }),
  "high-forecast": ({ crestM, overTopM }, u) => ({
    what: `If the high forecast comes true, the river crests at ${u.elevation(crestM)}, ${u.length(overTopM)} over the levee.`,
    remedy: "Decide now whether to build for the high forecast, and at which stage people leave.",
  }),
  "forecast-zero": ({ gaugeZeroM }, u) => ({
    what:
      gaugeZeroM === null
        ? "The forecast is by stage and no gauge zero is given: its elevations are not known, and so is whether there is time."
        : `The forecast is by stage while the water is given as an elevation: it is set on the gauge zero of ${u.elevation(gaugeZeroM)}.`,
    remedy:
      gaugeZeroM === null
        ? "Give the water by stage, with the gauge zero, in Gauge and forecast; if the figures are elevations, enter the forecast again with Elevation chosen."
        : "Check the gauge zero in Water, or give the water by stage.",
  }),
};

export const TIME_RULES: RulesOf<"time" | "forecast-crest" | "forecast-zero"> = {
  time: rule(
    "The top of levee stays above the water by the margin at every hour of the forecast.",
    "THW-E, derived from ERDC (rates); the margin is judgement",
  ),
  "forecast-crest": (u) => ({
    rule: "The sized-for water is the forecast crest.",
    source: `NDSU-11 (${u.figure(FOOT_M)} above the projected crest)`,
  }),
  "forecast-zero": rule(
    "A forecast by stage is on the same gauge zero as the water.",
    "NWS-D, USGS-D",
  ),
};
