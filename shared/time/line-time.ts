import { isComplete } from "../completeness.ts";
import { HOUR_S } from "../constants.ts";
import type { CutWalk } from "../cut-walk.ts";
import { timeOf } from "../defaults.ts";
import type { LonLat, Plan, TimeSettings } from "../plan.ts";
import { wholeOrder } from "../quantities.ts";
import { waterElevationAtGauge } from "../stage.ts";
import type { Trace } from "../trace.ts";
import { bandCrests } from "./band-crests.ts";
import { missingCrew } from "./crew-inputs.ts";
import { daylightFrom } from "./daylight.ts";
import { clockHour, type Moment, momentText } from "./forecast-time.ts";
import { hourRows } from "./hour-rows.ts";
import { type Band, firstAbove, type Hydrograph, hydrographOf } from "./hydrograph.ts";
import { type AheadResult, keepsAhead } from "./keeps-ahead.ts";
import { crewPace } from "./pace.ts";
import { buildOrder, type Schedule, scheduleWork } from "./schedule.ts";
import { stageCurve, type TotalsAt } from "./stage-curve.ts";
import { startOfWork } from "./start.ts";
import { type LiftedStretch, stretchesFor } from "./stretches.ts";
import type { AheadVerdict, Crew, LineTime, Pace, WorkStretch } from "./types.ts";
import { type Trial, waysOut } from "./ways-out.ts";
import { workClock } from "./work-hours.ts";

export interface LineTimeInputs {
  readonly plan: Plan;
  readonly trace: Trace;
  readonly cuts: CutWalk;
  readonly totalsAt: TotalsAt;
  /** Where the work is, for its daylight. */
  readonly at: LonLat;
}

/** Everything one line's time is calculated from. */
interface Job {
  readonly time: TimeSettings;
  readonly stretches: readonly LiftedStretch[];
  readonly start: Moment | null;
  readonly designM: number;
}

/** What the people entered make of it. */
interface Work {
  readonly crew: Crew;
  readonly clock: (workedH: number) => number;
  readonly daylight: LineTime["daylight"];
  readonly slow: Schedule;
  readonly fast: Schedule;
}

/**
 * Whether there is time: the crew's schedule, lowest ground first, against the forecast; what would make it
 * possible; the forecast's bands and the curve of bags against stage. While people, start or shifts are not
 * entered there is no schedule and no verdict; without a forecast the schedule stands alone.
 */
export function lineTime({ plan, trace, cuts, totalsAt, at }: LineTimeInputs): LineTime {
  const time = timeOf(plan);
  const job = jobFor(plan, time, trace, cuts);
  const { stretches, start } = job;
  const work = workOf(plan, job, at);
  const slow = work?.slow ?? null;
  const likely = riverOf(plan, time, "likely");
  const ahead = slow && start && likely ? aheadOf(job, slow, likely, start) : null;
  const verdicts = work ? verdictsOf(plan, job, work) : [];
  const first = verdicts.find(({ band, pace }) => band === "likely" && pace === "slow");
  const isKnown = first && (!first.ahead || isComplete(totalsAt(0)));
  const inTime = isKnown ? first.ahead : null;
  const bags = stretches.reduce((sum, { lifts }) => sum + bagsIn(lifts), 0);
  const wetH = wetHours(job, trace, cuts, likely);
  return {
    startAt: start && momentText(start),
    missing: missingCrew(plan),
    crew: work?.crew ?? null,
    daylight: work?.daylight ?? null,
    bags: wholeOrder(bags),
    finishSlowH: finite(work?.slow.finishH),
    finishFastH: finite(work?.fast.finishH),
    marginM: time.marginM,
    forecastEndH: start && likely ? (likely.atS.at(-1)! - start.atS) / HOUR_S : null,
    firstWetH: least(wetH),
    stretches: workStretches(job, trace, slow, wetH, ahead),
    verdicts,
    inTime,
    waysOut:
      work && inTime === false
        ? waysOut(trialOf(plan, job, work, likely!), work.crew.people, bags)
        : null,
    hours: slow ? hourRows({ ...job, schedule: slow, hydrograph: likely }) : [],
    crests: bandCrests(plan, totalsAt),
    curve: stageCurve(plan, totalsAt),
    wetH,
  };
}

function jobFor(plan: Plan, time: TimeSettings, trace: Trace, cuts: CutWalk): Job {
  return {
    time,
    stretches: stretchesFor(plan, trace, cuts, time.liftM),
    start: startOfWork(time),
    designM: waterElevationAtGauge(plan.water),
  };
}

/** Null while people, start or shifts are not entered. */
function workOf({ practice }: Plan, job: Job, at: LonLat): Work | null {
  const { time, start } = job;
  const { people } = practice;
  const { shifts, startAt, lit } = time;
  if (people === null || shifts === null || startAt === null || !start) return null;
  const crew = crewPace(practice, time, people);
  const startHour = clockHour(start);
  const daylight = daylightFrom(start, at);
  const clock = workClock({ ...time, shifts }, startHour, daylight);
  const [fromH, toH] = daylight(0);
  return {
    crew,
    clock,
    daylight: lit ? null : { fromH: fromH + startHour, toH: toH + startHour },
    slow: scheduleAt(job, clock, crew.slowBagsPerH),
    fast: scheduleAt(job, clock, crew.fastBagsPerH),
  };
}

function scheduleAt(
  { time, stretches }: Job,
  clock: Work["clock"],
  bagsPerH: number,
  shareOfWork = 1,
): Schedule {
  const pacing = {
    bagsPerH: bagsPerH / shareOfWork,
    crews: time.crews,
    setUpH: time.setUpH,
    clock,
  };
  return scheduleWork(stretches, pacing);
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

function trialOf({ practice }: Plan, job: Job, { clock }: Work, river: Hydrograph): Trial {
  const always = (workedH: number) => workedH;
  return (people, shareOfWork, dayAndNight) => {
    const { slowBagsPerH } = crewPace(practice, job.time, people);
    const schedule = scheduleAt(job, dayAndNight ? always : clock, slowBagsPerH, shareOfWork);
    return aheadOf(job, schedule, river, job.start!).behindFromH === null;
  };
}

function workStretches(
  job: Job,
  trace: Trace,
  slow: Schedule | null,
  wetH: Float32Array,
  ahead: AheadResult | null,
): WorkStretch[] {
  const place = new Map(buildOrder(job.stretches).map((stretch, k) => [stretch, k + 1]));
  return job.stretches.map((stretch, index) => {
    const done = slow?.byStretch[index] ?? [];
    const waterM = trace.waterM[stretch.lowestSample]!;
    return {
      fromM: stretch.fromM,
      toM: stretch.toM,
      order: place.get(index)!,
      lowestM: waterM + stretch.lowestM,
      crestM: waterM + stretch.crestM,
      bags: bagsIn(stretch.lifts),
      crew: done.at(-1)?.crew ?? null,
      startH: finite(done[0]?.startH),
      finishH: finite(done.at(-1)?.finishH),
      wetH: finite(wetH[stretch.lowestSample]!),
      leastAheadM: finite(ahead?.leastAheadM[index] ?? Number.NaN),
      leastSpareM: finite(ahead?.stretchSpareM[index] ?? Number.NaN),
    };
  });
}

/** When the river passes the lowest ground under the base at every sample, as if nothing kept it off. */
function wetHours(
  { start, designM }: Job,
  trace: Trace,
  cuts: CutWalk,
  river: Hydrograph | null,
): Float32Array {
  const wetH = new Float32Array(trace.count).fill(Number.NaN);
  if (!start || !river) return wetH;
  const above = firstAbove(river, start.atS);
  for (let i = 0; i < trace.count; i++) {
    const levelM = designM + cuts.lowestGroundM[i]! - trace.waterM[i]!;
    const atS = Number.isNaN(levelM) ? null : above(levelM);
    if (atS !== null) wetH[i] = (atS - start.atS) / HOUR_S;
  }
  return wetH;
}

function bagsIn(lifts: LiftedStretch["lifts"]): number {
  return lifts.reduce((sum, { bags }) => sum + bags, 0);
}

function finite(value = Number.NaN): number | null {
  return Number.isFinite(value) ? value : null;
}

function least(values: Float32Array): number | null {
  return finite(
    values.filter((value) => !Number.isNaN(value)).reduce((a, b) => Math.min(a, b), Infinity),
  );
}
