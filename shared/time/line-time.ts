import { closureTime } from "../closures/closure-time.ts";
import { isComplete } from "../completeness.ts";
import { HOUR_S } from "../constants.ts";
import type { CutWalk } from "../cut-walk.ts";
import { timeOf } from "../defaults.ts";
import type { LineSamples } from "../line-samples.ts";
import type { Closure, LonLat, Plan, TimeSettings } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { bandCrests } from "./band-crests.ts";
import {
  bagsOnHold,
  bagsToLay,
  buildSequence,
  type PacedWork,
  scheduleOf,
} from "./build-sequence.ts";
import { missingCrew } from "./crew-inputs.ts";
import { daylightFrom } from "./daylight.ts";
import { clockHour, type Moment, momentText } from "./forecast-time.ts";
import { hourRows } from "./hour-rows.ts";
import {
  type Band,
  firstAbove,
  type Hydrograph,
  hydrographOf,
  lacksGaugeZero,
} from "./hydrograph.ts";
import { type AheadResult, keepsAhead } from "./keeps-ahead.ts";
import { crewPace } from "./pace.ts";
import { peopleAtLeast } from "./people-at-least.ts";
import type { Schedule } from "./schedule.ts";
import { type River, type Sequencer, sequencer } from "./sequencer.ts";
import { stageCurve, type TotalsAt } from "./stage-curve.ts";
import { startOfWork } from "./start.ts";
import { type LiftedStretch, stretchesFor } from "./stretches.ts";
import { isAllOnHold } from "./time-verdict.ts";
import type { AheadVerdict, ClosureTime, Crew, LineTime, Pace, WaysOut } from "./types.ts";
import { waysOut } from "./ways-out.ts";
import { workClock, workedUntil } from "./work-hours.ts";
import { finite, workStretches } from "./work-stretches.ts";

export interface LineTimeInputs {
  readonly plan: Plan;
  readonly samples: LineSamples;
  readonly cuts: CutWalk;
  readonly totalsAt: TotalsAt;
  /** Where the work is, for its daylight. */
  readonly at: LonLat;
  /** True of a ring. */
  readonly closed: boolean;
  /** Stretches left open until they are closed; left out = none. */
  readonly closures?: readonly Closure[];
}

/** Everything one line's time is calculated from. */
interface Job {
  readonly time: TimeSettings;
  readonly stretches: readonly LiftedStretch[];
  /** Those of each closure, which are in no crew's steps. */
  readonly aside: readonly (readonly LiftedStretch[])[];
  readonly sequencer: Sequencer;
  /** The same with what is on HOLD built, too; null where nothing is. */
  readonly withHold: Sequencer | null;
  readonly start: Moment | null;
  readonly designM: number;
  /** The likely forecast on the clock of the work; null without one. */
  readonly river: River | null;
}

/** What the people entered make of it. */
interface Work {
  readonly crew: Crew;
  readonly daylight: LineTime["daylight"];
  readonly paced: Readonly<Record<Pace, PacedWork>>;
}

/**
 * Whether there is time: the build sequence by crew against the forecast; what would make it possible; the
 * forecast's bands and the curve of bags against stage. While people, start or shifts are not entered no hour and no
 * verdict is known; without a forecast the hours stand alone.
 */
export function lineTime(inputs: LineTimeInputs): LineTime {
  const { plan, samples, cuts, totalsAt } = inputs;
  const time = timeOf(plan);
  const likely = riverOf(plan, time, "likely");
  const job = jobFor(inputs, time, likely);
  const { stretches, start, river, designM } = job;
  const work = workOf(plan, job, inputs.at);
  const balance = work && { ...work.paced.slow, river: river && river.endH > 0 ? river : null };
  const parts = job.sequencer.divide(balance);
  const schedules = work && {
    slow: scheduleOf({ stretches, parts }, work.paced.slow),
    fast: scheduleOf({ stretches, parts }, work.paced.fast),
  };
  const slow = schedules?.slow ?? null;
  const ahead = slow && start && likely ? aheadOf(job, slow, likely, start) : null;
  const [toLay, onHold] = [bagsToLay(stretches), bagsOnHold(stretches)];
  const ofWork = isAllOnHold({ bags: toLay, bagsOnHold: onHold }) ? null : schedules;
  const verdicts = ofWork ? verdictsOf(plan, job, ofWork) : [];
  const first = verdicts.find(({ band, pace }) => band === "likely" && pace === "slow");
  const isWhole = isComplete(totalsAt(0)) && !stretches.some(({ isOnHold }) => isOnHold);
  const closures = closureTimes(inputs, job);
  const isClosed = closures.every((each) => each.inTime === true);
  const inTime = first && (!first.ahead || (isWhole && isClosed)) ? first.ahead : null;
  const wetH = wetHours(job, samples, cuts, likely);
  const passesH = river?.passesH ?? (() => Number.POSITIVE_INFINITY);
  return {
    startAt: start && momentText(start),
    missing: missingCrew(plan),
    crew: work?.crew ?? null,
    daylight: work?.daylight ?? null,
    bags: toLay,
    bagsOnHold: onHold,
    finishSlowH: finite(ofWork?.slow.finishH),
    finishFastH: finite(ofWork?.fast.finishH),
    marginM: time.marginM,
    lacksGaugeZero: time.forecast !== null && lacksGaugeZero(plan, time.forecast),
    forecastEndH: river === null ? null : river.endH,
    firstWetH: least(wetH),
    stretches: workStretches({ samples, stretches, parts, slow, wetH, ahead }),
    parts: buildSequence({
      ...{ plan, samples, stretches, parts, designM, passesH },
      lengthM: samples.chainageM[samples.count - 1]!,
      slow: work?.paced.slow ?? null,
      fast: work?.paced.fast ?? null,
    }),
    verdicts,
    closures,
    inTime,
    waysOut: work && inTime === false ? waysOutOf(plan, job, work) : null,
    hours: slow ? hourRows({ ...job, schedule: slow, hydrograph: likely }) : [],
    crests: bandCrests(plan, totalsAt),
    curve: stageCurve(plan, totalsAt),
    wetH,
  };
}

function jobFor(
  { plan, samples, cuts, closed, closures = [] }: LineTimeInputs,
  time: TimeSettings,
  likely: Hydrograph | null,
): Job {
  const { crews, liftM, marginM } = time;
  const all = stretchesFor(plan, samples, cuts, liftM, closed, closures);
  const stretches = all.filter(({ closure }) => closure === undefined);
  const aside = closures.map((_, k) =>
    all.flatMap((each) => (each.closure === k ? [{ ...each, isOnHold: false }] : [])),
  );
  const lengthM = samples.chainageM[samples.count - 1]!;
  const start = startOfWork(time);
  const designM = waterElevationAtGauge(plan.water);
  const line = { stretches, crews, liftM, marginM, lengthM, closed };
  const released = stretches.map((each) => ({ ...each, isOnHold: false }));
  const hasHold = stretches.some(({ isOnHold }) => isOnHold);
  return {
    ...{ time, stretches, aside, start, designM },
    sequencer: sequencer(line),
    withHold: hasHold ? sequencer({ ...line, stretches: released }) : null,
    river: start && likely && riverFrom(start, likely, designM),
  };
}

/** Bags of the closures and of the steps, whole, add up to those of the line. */
function closureTimes({ plan, closures = [] }: LineTimeInputs, job: Job): ClosureTime[] {
  const { stretches, aside, designM, start, river, time } = job;
  const counted = [...stretches];
  return closures.map((closure, k) => {
    const before = bagsToLay(counted);
    counted.push(...aside[k]!);
    const bags = bagsToLay(counted) - before;
    const inputs = { plan, bags, designM, marginM: time.marginM, start, river };
    return closureTime(closure, aside[k]!, inputs);
  });
}

function riverFrom({ atS }: Moment, hydrograph: Hydrograph, designM: number): River {
  const above = firstAbove(hydrograph, atS);
  const hourOf = (momentS: number) => (momentS - atS) / HOUR_S;
  return {
    passesH: (levelM) => {
      const momentS = above(designM + levelM);
      return momentS === null ? Number.POSITIVE_INFINITY : hourOf(momentS);
    },
    endH: hourOf(hydrograph.atS.at(-1)!),
  };
}

/** Null while people, start or shifts are not entered. */
function workOf({ practice }: Plan, { time, start, sequencer }: Job, at: LonLat): Work | null {
  const { people } = practice;
  const { shifts, startAt, lit, setUpH } = time;
  if (people === null || shifts === null || startAt === null || !start) return null;
  const crew = { ...crewPace(practice, time, people), crews: sequencer.crews };
  const startHour = clockHour(start);
  const daylight = daylightFrom(start, at);
  const clock = workClock({ ...time, shifts }, startHour, daylight);
  const [fromH, toH] = daylight(0);
  const paced = (bagsPerH: number): PacedWork => ({
    pacing: { bagsPerH: bagsPerH / crew.crews, setUpH },
    clock,
  });
  return {
    crew,
    daylight: lit ? null : { fromH: fromH + startHour, toH: toH + startHour },
    paced: { slow: paced(crew.slowBagsPerH), fast: paced(crew.fastBagsPerH) },
  };
}

function riverOf(plan: Plan, { forecast }: TimeSettings, band: Band): Hydrograph | null {
  return forecast && hydrographOf(plan, forecast, band);
}

function aheadOf(job: Job, schedule: Schedule, hydrograph: Hydrograph, start: Moment): AheadResult {
  const { stretches, designM, time } = job;
  const { marginM } = time;
  return keepsAhead({ stretches, schedule, hydrograph, startS: start.atS, designM, marginM });
}

function verdictsOf(
  plan: Plan,
  job: Job,
  schedules: Readonly<Record<Pace, Schedule>>,
): AheadVerdict[] {
  const { start, stretches } = job;
  const likely = riverOf(plan, job.time, "likely");
  if (!start || !likely || start.atS >= likely.atS.at(-1)!) return [];
  return (["low", "likely", "high"] as const).flatMap((band) => {
    const river = riverOf(plan, job.time, band);
    if (!river) return [];
    return (["slow", "fast"] as const).map((pace): AheadVerdict => {
      const found = aheadOf(job, schedules[pace], river, start);
      const { leastSpareM, behindFromH, behindStretch } = found;
      const behindAtM = behindStretch === null ? null : stretches[behindStretch]!.fromM;
      return { band, pace, ahead: behindFromH === null, leastSpareM, behindFromH, behindAtM };
    });
  });
}

/** What would make a late line possible, each by the build sequence that it would have. */
function waysOutOf({ practice }: Plan, job: Job, { crew, paced }: Work): WaysOut {
  const { time, stretches } = job;
  const { clock } = paced.slow;
  const { setUpH, marginM } = time;
  const bagsPerHEach = crewPace(practice, time, 1).slowBagsPerH;
  const dueH = duesBy(job, clock);
  const needed = (due: typeof dueH, by = job.sequencer) => by.crews * by.leastPace(setUpH, due);
  return {
    ...waysOut({
      ...{ bags: bagsToLay(stretches), bagsPerHEach, bagsPerH: crew.slowBagsPerH },
      neededByDay: needed(dueH),
      neededWithHold: job.withHold && needed(dueH, job.withHold),
      neededAlways: needed(duesBy(job, (workedH) => workedH)),
    }),
    peopleAtLeast: peopleAtLeast({ stretches, marginM, setUpH, dueH, bagsPerH: bagsPerHEach }),
  };
}

/** Hours worked until the likely forecast passes a level, each calculated once. */
function duesBy({ river }: Job, clock: PacedWork["clock"]): (levelM: number) => number {
  const known = new Map<number, number>();
  return (levelM) => {
    const found = known.get(levelM) ?? workedUntil(clock, river!.passesH(levelM));
    known.set(levelM, found);
    return found;
  };
}

/** When the river passes the lowest ground under the base at every sample, as if nothing kept it off. */
function wetHours(
  { start, designM }: Job,
  samples: LineSamples,
  cuts: CutWalk,
  river: Hydrograph | null,
): Float32Array {
  const wetH = new Float32Array(samples.count).fill(Number.NaN);
  if (!start || !river) return wetH;
  const above = firstAbove(river, start.atS);
  for (let i = 0; i < samples.count; i++) {
    const levelM = designM + cuts.lowestGroundM[i]! - samples.waterM[i]!;
    const atS = Number.isNaN(levelM) ? null : above(levelM);
    if (atS !== null) wetH[i] = (atS - start.atS) / HOUR_S;
  }
  return wetH;
}

function least(values: Float32Array): number | null {
  return finite(
    values.filter((value) => !Number.isNaN(value)).reduce((a, b) => Math.min(a, b), Infinity),
  );
}
