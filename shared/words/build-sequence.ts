import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import { formatSetting } from "../setting-text.ts";
import { MOVE_H, WALK_M_PER_S } from "../time/crew-steps.ts";
import { isAllOnHold } from "../time/time-verdict.ts";
import type { BuildStep, Crew, HoldStretch, LineTime } from "../time/types.ts";
import { formatCount, formatHours, formatLength, formatShare, type UnitSystem } from "../units.ts";
import { type ClockForm, hourWords, shownHour } from "./clock.ts";
import { levelWords, namedLevel } from "./time.ts";

/** What steps are told with. */
export interface SequenceSaid {
  readonly plan: Plan;
  readonly time: LineTime;
  readonly system: UnitSystem;
}

const HOUR_MIN = 60;
/** A step is shown done no sooner, and needed no later, than it is. */
const DONE: ClockForm = { rounded: "up", isNarrow: true };
const NEEDED: ClockForm = { rounded: "down", isNarrow: true };

/** True where there is a forecast that needs steps by an hour. */
export function hasNeededHours({ verdicts }: LineTime): boolean {
  return verdicts.length > 0;
}

/** True where the forecast goes on after the start of work, so that it says what the water does not reach. */
function isInForecast({ forecastEndH }: LineTime): boolean {
  return forecastEndH !== null && forecastEndH > 0;
}

/** When a step must be done: `Wed 06:45`, `not reached`, or `28.4 ft` of stage where no forecast counts. */
export function neededWords(
  { neededM, neededH }: Pick<BuildStep, "neededM" | "neededH">,
  { plan, time, system }: SequenceSaid,
): string {
  if (!timeOf(plan).forecast || time.lacksGaugeZero) return levelWords(plan, neededM, system);
  return neededH === null ? "not reached" : hourWords(time.startAt, neededH, system, NEEDED);
}

/** When a step is done at a pace: `Tue 09:15`. */
export function doneWords(finishH: number | null, { time, system }: SequenceSaid): string {
  if (time.missing.length > 0 || isAllOnHold(time)) return "not known";
  return finishH === null ? "over a year" : hourWords(time.startAt, finishH, system, DONE);
}

/** True of a step that the water comes to before it is done, at the slow pace. */
export function isLateStep({ earlyH }: Pick<BuildStep, "earlyH">): boolean {
  return earlyH !== null && earlyH < -1e-6;
}

/**
 * `16 h early`, `LATE 2 h`, `LATE 15 min`: between the hours as they are shown, so that it can be checked on paper; how
 * late is rounded up, how early down. Empty where nothing is known.
 */
export function earlyWords(step: BuildStep, { startAt }: Pick<LineTime, "startAt">): string {
  const { earlyH, neededH, finishSlowH } = step;
  if (earlyH === null) return "";
  const shownH = shownHour(startAt, neededH!, NEEDED) - shownHour(startAt, finishSlowH!, DONE);
  if (isLateStep(step)) return `LATE ${spanWords(-shownH, Math.ceil)}`;
  return shownH * HOUR_MIN < 1 ? "just in time" : `${spanWords(shownH, Math.floor)} early`;
}

function spanWords(hours: number, round: (value: number) => number): string {
  const minutes = Math.round(hours * HOUR_MIN);
  return minutes < HOUR_MIN ? `${minutes} min` : `${round(minutes / HOUR_MIN)} h`;
}

/** `4–9`; a dash where it is not of bags alone. */
export function coursesCell({ courses }: BuildStep): string {
  if (!courses) return "–";
  const [fewest, most] = courses;
  return fewest === most ? `${most}` : `${fewest}–${most}`;
}

/** What a stretch on HOLD says by its place: an engineer decides before the water is there. */
export function holdWords(hold: HoldStretch, { plan, time, system }: SequenceSaid): string {
  const by =
    hold.decideH !== null
      ? `${hourWords(time.startAt, hold.decideH, system, NEEDED)}: water is there`
      : `${namedLevel(plan, hold.decideM, system)}: water is there${isInForecast(time) ? "; not in this forecast" : ""}`;
  return `over the height limit; an engineer decides before ${by}`;
}

/** That the bags on HOLD, and those of ways left open, are ordered and in no step; empty where there are none. */
export function onHoldWords({ bagsOnHold, closures }: LineTime): string {
  const aside = closures.reduce((sum, { bags }) => sum + bags, 0);
  return [
    bagsOnHold > 0 &&
      `${formatCount(bagsOnHold)} bags on HOLD are in the order, in no step and in no hours.`,
    closures.length > 0 &&
      `${formatCount(aside)} bags for ways left open are set beside them, in no step: laid last, by the people kept there.`,
  ]
    .filter(Boolean)
    .join(" ");
}

/** What the columns of the build sequence mean. */
export function readingWords({ plan, time, system }: SequenceSaid): string[] {
  const { forecast } = timeOf(plan);
  const { spareShare } = plan.practice;
  const margin = formatLength(time.marginM, system);
  return [
    forecast
      ? `Needed by keeps what is laid ${margin} above the likely forecast.`
      : `Needed by is the water at the gauge at which what is laid is ${margin} above it.`,
    "“Below” is below the mark on the stake. Keep each lift level.",
    `Bags with ${formatShare(spareShare)} spare.`,
  ];
}

/** When the crews work, and what is counted beside the bags. */
export function workWords({ plan, time, system }: SequenceSaid): string {
  const { shifts, shiftH, lit, setUpH } = timeOf(plan);
  const begin = time.startAt && hourWords(time.startAt, 0, system, { long: true, toMin: 1 });
  return [
    begin && `Start ${begin}.`,
    shifts !== null &&
      `${shifts} ${shifts === 1 ? "shift" : "shifts"} of ${formatHours(shiftH)} in 24 hours, ${lit ? "at night too, under lights" : daylightWords(time)}; ${formatHours(setUpH)} to set up first.`,
    movingWords(system),
  ]
    .filter(Boolean)
    .join(" ");
}

/** What is counted where a crew goes on to a step elsewhere. */
export function movingWords(system: UnitSystem): string {
  const speed = `${formatLength(WALK_M_PER_S, system, 1)} a second`;
  return `To a step elsewhere: a walk at ${speed} and ${Math.round(MOVE_H * HOUR_MIN)} min to set up (common practice, no source).`;
}

/** `by daylight, 06:52 to 19:48 on the first day`. */
function daylightWords({ daylight }: LineTime): string {
  if (!daylight) return "by daylight";
  const clock = (hour: number) => formatSetting("clock", hour, "us");
  return `by daylight, ${clock(daylight.fromH)} to ${clock(daylight.toH)} on the first day`;
}

/** People in each crew: `2 × 30`, or `2 × 41–42` where they do not divide. */
export function crewsWords({ people, crews }: Crew): string {
  const [fewest, most] = [Math.floor(people / crews), Math.ceil(people / crews)];
  const each = fewest === most ? formatCount(most) : `${formatCount(fewest)}–${formatCount(most)}`;
  return `${crews} × ${each}`;
}

/** Who does what in a crew: `people, 15 fill, 15 lay`. */
export function crewShareWords({ fillers, layers, crews }: Crew): string {
  const each = (people: number) => formatCount(Math.round(people / crews));
  return `people, ${each(fillers)} fill, ${each(layers)} lay${crews > 1 ? " a crew" : ""}`;
}

/** `570–900`: bags an hour of one crew, at the slow and the fast pace. */
export function crewPaceWords({ slowBagsPerH, fastBagsPerH, crews }: Crew): string {
  const each = (bags: number) => formatCount(Math.round(bags / crews));
  return `${each(slowBagsPerH)}–${each(fastBagsPerH)}`;
}
