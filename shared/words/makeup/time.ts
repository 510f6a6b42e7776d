import { FOOT_M } from "../../constants.ts";
import { timeOf } from "../../defaults.ts";
import type { Plan } from "../../plan.ts";
import { formatSetting } from "../../setting-text.ts";
import { SETTINGS, type SettingPath } from "../../settings.ts";
import { MOVE_H, WALK_M_PER_S } from "../../time/crew-steps.ts";
import type { LineTime } from "../../time/types.ts";
import { formatCount, formatHours, formatLength, type UnitSystem } from "../../units.ts";
import { unitsOf } from "../units.ts";
import type { Input, Makeup } from "./inputs.ts";

export interface TimeMakeupInputs {
  readonly plan: Plan;
  readonly time: LineTime;
  readonly system: UnitSystem;
}

/** Names of the numbers about time that have a make-up. */
export type TimeMakeupKey = keyof typeof MAKEUPS;

type Words = (inputs: TimeMakeupInputs) => Makeup;

/** How a number about time was made, in the person's units: formula, inputs and source. */
export function timeMakeup(key: TimeMakeupKey, inputs: TimeMakeupInputs): Makeup {
  return MAKEUPS[key](inputs);
}

const MAKEUPS = {
  finishSlowH: (inputs) => ({
    formula:
      "hours = setting up + walking between steps + bags of a crew / its bags an hour, the crew that is done last, spread over the working hours of each day; slow = the lesser of filling or laying at its slow rate and the whole job's rate",
    inputs: [
      { name: "bags", value: formatCount(inputs.time.bags) },
      ...pace(inputs),
      { name: "bags an hour", value: countOrUnknown(inputs.time.crew?.slowBagsPerH) },
      ...crews(inputs),
      ...hours(inputs),
    ],
    source:
      "THW-E (40 to 60 bags an hour, filling or laying); derived from ERDC (whole job, 19); walking and setting up between steps are common practice, no source.",
  }),
  finishFastH: (inputs) => ({
    formula:
      "hours = setting up + walking between steps + bags of a crew / its bags an hour, the crew that is done last, spread over the working hours of each day; fast = the smaller party at its fast rate",
    inputs: [
      { name: "bags", value: formatCount(inputs.time.bags) },
      ...pace(inputs),
      { name: "bags an hour", value: countOrUnknown(inputs.time.crew?.fastBagsPerH) },
      ...crews(inputs),
      ...hours(inputs),
    ],
    source:
      "THW-E (40 to 60 bags an hour, filling or laying); walking and setting up between steps are common practice, no source.",
  }),
  wetH: ({ time }) => ({
    formula:
      "wet = when the likely forecast passes the lowest ground under the base, as if nothing were built",
    inputs: [
      { name: "start of work", value: time.startAt ?? "not stated" },
      {
        name: "first wet",
        value: wetWords(time),
      },
    ],
    source: "The forecast, straight between its rows.",
  }),
  ahead: (inputs) => ({
    formula:
      "ahead = finished lifts − highest water until the next lift is finished, at least the margin wherever the ground is wet",
    inputs: [
      path(inputs, "margin", "time.marginM", inputs.time.marginM),
      path(inputs, "lift", "time.liftM", timeOf(inputs.plan).liftM),
      {
        name: "least anywhere",
        value: formatLength(leastAhead(inputs.time), inputs.system),
      },
    ],
    source: "judgement; what the water needs first is built first: common practice, no source.",
  }),
  waysOut: ({ time }) => ({
    formula:
      "the fewest people with whom every step of the build sequence is done before the water needs it, at the slow pace; the most bags that the people stated lay in time; at least = the bags due by each hour / the hours worked until then / the bags of one person an hour, nobody walking",
    inputs: [
      { name: "people stated", value: countOrUnknown(time.crew?.people) },
      { name: "people enough", value: countOrNone(time.waysOut?.people) },
      { name: "any sequence needs at least", value: countOrNone(time.waysOut?.peopleAtLeast) },
      { name: "day and night under lights", value: countOrNone(time.waysOut?.peopleDayAndNight) },
      { name: "bags at most", value: countOrNone(time.waysOut?.bagsAtMost) },
    ],
    source: "The build sequence divided again for each number; never with less freeboard.",
  }),
  nextFoot: ({ time, system }) => ({
    formula: `the same line sized for ${unitsOf(system).length(FOOT_M)} more water, less what it is now`,
    inputs: [
      { name: "bags more", value: formatCount(time.curve.nextFoot?.bags ?? Number.NaN) },
      {
        name: "more over the height limit",
        value: formatLength(time.curve.nextFoot?.overLimitM ?? Number.NaN, system, 0),
      },
      {
        name: "height limit reached at",
        value:
          time.curve.limitRiseM === null
            ? "outside the curve"
            : `${formatLength(time.curve.limitRiseM, system)} above the sized-for water`,
      },
    ],
    source: "Sized at each water; nothing between is read off a curve.",
  }),
} as const satisfies Record<string, Words>;

function wetWords({ firstWetH, forecastEndH }: LineTime): string {
  if (firstWetH !== null) return formatHours(firstWetH);
  return forecastEndH === null ? "not stated" : `not in ${formatHours(forecastEndH)} of forecast`;
}

function pace(inputs: TimeMakeupInputs): Input[] {
  const { crew } = inputs.time;
  const { practice } = inputs.plan;
  return [
    { name: "people who fill", value: countOrUnknown(crew?.fillers) },
    { name: "people who lay", value: countOrUnknown(crew?.layers) },
    path(inputs, "filling or laying, slow", "practice.taskRateLow", practice.taskRateLow),
    path(inputs, "filling or laying, fast", "practice.taskRateHigh", practice.taskRateHigh),
    path(inputs, "whole job", "practice.jobRate", practice.jobRate),
  ];
}

function crews({ time, system }: TimeMakeupInputs): Input[] {
  return [
    { name: "crews", value: countOrUnknown(time.crew?.crews) },
    {
      name: "bags of each crew",
      value: time.parts.map(({ bags }) => formatCount(bags)).join(", "),
    },
    ...(time.bagsOnHold > 0
      ? [{ name: "on HOLD, in no hours", value: formatCount(time.bagsOnHold) }]
      : []),
    { name: "walking", value: `${formatLength(WALK_M_PER_S, system)} a second` },
    { name: "setting up after a walk", value: `${Math.round(60 * MOVE_H)} min` },
  ];
}

function hours(inputs: TimeMakeupInputs): Input[] {
  const time = timeOf(inputs.plan);
  return [
    path(inputs, "setting up", "time.setUpH", time.setUpH),
    { name: "shifts", value: countOrUnknown(time.shifts) },
    path(inputs, "a shift", "time.shiftH", time.shiftH),
    ...(time.lit ? [{ name: "work", value: "at night too, 24 h" }] : days(inputs)),
  ];
}

/** Daylight of the first day, and what of it is worked where that is less. */
function days({ plan, time: { daylight }, system }: TimeMakeupInputs): Input[] {
  const { dayFromH, dayToH } = timeOf(plan);
  const clock = (hour: number) => formatSetting("clock", hour, system);
  const sun = daylight ? `${clock(daylight.fromH)} to ${clock(daylight.toH)}` : NOT_ENTERED;
  return [
    { name: "daylight at the site, first day", value: sun },
    ...(dayFromH === null ? [] : [{ name: "no work before", value: clock(dayFromH) }]),
    ...(dayToH === null ? [] : [{ name: "no work after", value: clock(dayToH) }]),
  ];
}

function path({ system }: TimeMakeupInputs, name: string, at: SettingPath, valueSI: number): Input {
  return { name, value: formatSetting(SETTINGS[at].kind, valueSI, system) };
}

function leastAhead({ stretches }: LineTime): number {
  const known = stretches.map(({ leastAheadM }) => leastAheadM).filter((m) => m !== null);
  return known.length > 0 ? Math.min(...known) : Number.NaN;
}

const NOT_ENTERED = "not entered";

function countOrUnknown(count: number | null | undefined): string {
  return typeof count === "number" ? formatCount(Math.round(count)) : NOT_ENTERED;
}

function countOrNone(count: number | null | undefined): string {
  return typeof count === "number" ? formatCount(count) : "none found, 0";
}
