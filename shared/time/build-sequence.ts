import type { LineSamples } from "../line-samples.ts";
import type { Plan } from "../plan.ts";
import { coursesFor, wholeOrder } from "../quantities.ts";
import { begunAt, type CrewPacing, doneAt } from "./crew-pace.ts";
import type { CrewStep } from "./crew-steps.ts";
import type { Part } from "./divider.ts";
import type { Schedule } from "./schedule.ts";
import type { LiftedStretch } from "./stretches.ts";
import { towards } from "./toward.ts";
import type { BuildStep, CrewPart, HoldStretch } from "./types.ts";

/** The parts of a line, and what its steps are told with. Hours are counted from the start of work. */
export interface SequenceInputs {
  readonly plan: Plan;
  readonly samples: LineSamples;
  readonly stretches: readonly LiftedStretch[];
  readonly parts: readonly Part[];
  readonly lengthM: number;
  /** Water at the gauge that the line is sized for, metres. */
  readonly designM: number;
  /** When the likely forecast passes a level above the design water; Infinity where it does not, and without one. */
  readonly passesH: (levelM: number) => number;
  /** Null while the crew is not known. */
  readonly slow: PacedWork | null;
  readonly fast: PacedWork | null;
}

/** How fast one crew works, and how its hours are spread over the days. */
export interface PacedWork {
  readonly pacing: CrewPacing;
  readonly clock: (workedH: number) => number;
}

const SAME_M = 1e-6;

/** The build sequence by crew, as people read it: whole bags, hours of the clock. */
export function buildSequence(inputs: SequenceInputs): CrewPart[] {
  const { parts } = inputs;
  const toward = towards(parts.map((part) => middleOf(part, inputs)));
  const whole = wholeBags(inputs);
  return parts.map((part, k) => {
    const first = inputs.stretches[part.stretches[0]!]!;
    const last = inputs.stretches[part.stretches.at(-1)!]!;
    const steps = buildSteps(part, inputs, whole);
    return {
      ...{ crew: k + 1, toward: toward[k]!, fromM: first.fromM, toM: last.toM, steps },
      bags: steps.reduce((sum, { bags }) => sum + bags, 0),
      holds: holdStretches(part, inputs),
    };
  });
}

/** Bags of what is on HOLD, whole. */
export function bagsOnHold(stretches: readonly LiftedStretch[]): number {
  return wholeOrder(bagsOf(stretches.filter(({ isOnHold }) => isOnHold)));
}

/** Bags in the build sequence, whole: with those on HOLD as many as are ordered. */
export function bagsToLay(stretches: readonly LiftedStretch[]): number {
  return wholeOrder(bagsOf(stretches)) - bagsOnHold(stretches);
}

/** When each lift of each stretch is done at a pace; nothing of a stretch on HOLD. */
export function scheduleOf(
  { stretches, parts }: Pick<SequenceInputs, "stretches" | "parts">,
  { pacing, clock }: PacedWork,
): Schedule {
  const byStretch = stretches.map((): Schedule["byStretch"][number][number][] => []);
  let finishH = 0;
  for (const { steps } of parts) {
    for (const step of steps) {
      const hours = { startH: clock(begunAt(step, pacing)), finishH: clock(doneAt(step, pacing)) };
      finishH = Math.max(finishH, hours.finishH);
      for (const index of step.stretches) {
        const done = byStretch[index]!;
        for (const lift of stretches[index]!.lifts.slice(done.length)) {
          if (lift.topM <= step.topM + SAME_M) done.push({ ...lift, ...hours });
        }
      }
    }
  }
  return { byStretch, finishH };
}

/** Steps in whole bags that add up to those laid: the bags of a step by all those before it. */
function wholeBags({ stretches, parts }: SequenceInputs): ReadonlyMap<CrewStep, number> {
  const steps = parts.flatMap((part) => part.steps);
  const scale = bagsToLay(stretches) / steps.reduce((sum, { bags }) => sum + bags, 0);
  let exact = 0;
  let counted = 0;
  return new Map(
    steps.map((step) => {
      exact += step.bags * scale;
      const bags = Math.round(exact) - counted;
      counted += bags;
      return [step, bags];
    }),
  );
}

function buildSteps(
  { steps }: Part,
  inputs: SequenceInputs,
  whole: ReadonlyMap<CrewStep, number>,
): BuildStep[] {
  const { stretches, lengthM, designM, passesH, slow, fast } = inputs;
  const hourAt = (work: PacedWork | null, worked: typeof doneAt, step: CrewStep) =>
    work && finite(work.clock(worked(step, work.pacing)));
  const laidM = new Map<number, number>();
  return steps.map((step, k): BuildStep => {
    const finishSlowH = hourAt(slow, doneAt, step);
    const neededH = finite(passesH(step.needM));
    const courses = coursesOf(step, inputs, laidM);
    for (const index of step.stretches) laidM.set(index, step.topM);
    return {
      number: k + 1,
      fromM: step.fromM >= lengthM ? step.fromM - lengthM : step.fromM,
      toM: step.toM > lengthM + SAME_M ? step.toM - lengthM : step.toM,
      belowM: Math.max(0, stretches[step.stretches[0]!]!.crestM - step.topM),
      bags: whole.get(step)!,
      courses,
      startH: hourAt(slow, begunAt, step),
      finishSlowH,
      finishFastH: hourAt(fast, doneAt, step),
      neededM: designM + step.needM,
      neededH,
      earlyH: neededH === null || finishSlowH === null ? null : neededH - finishSlowH,
    };
  });
}

/** @param laidM what the crew's earlier steps have laid, by stretch */
function coursesOf(
  { stretches: indexes, topM }: CrewStep,
  { plan, stretches }: SequenceInputs,
  laidM: ReadonlyMap<number, number>,
): BuildStep["courses"] {
  const own = indexes.map((index) => ({ index, ...stretches[index]! }));
  if (own.some(({ isOfBags }) => !isOfBags)) return null;
  const counts = own.map(({ index, lowestM, standsM = lowestM }) =>
    coursesFor(topM - (laidM.get(index) ?? standsM), plan.section),
  );
  return [Math.min(...counts), Math.max(...counts)];
}

/** Stretches on HOLD in a part, those that touch as one. */
function holdStretches(part: Part, { stretches, designM, passesH }: SequenceInputs): HoldStretch[] {
  const found: HoldStretch[] = [];
  let before: LiftedStretch | null = null;
  for (const stretch of part.stretches.map((index) => stretches[index]!)) {
    if (stretch.isOnHold) {
      const decideM = designM + stretch.lowestM;
      const last = before?.isOnHold ? found.pop() : undefined;
      const lowestM = Math.min(decideM, last?.decideM ?? decideM);
      found.push({
        ...{ fromM: last?.fromM ?? stretch.fromM, toM: stretch.toM },
        bags: (last?.bags ?? 0) + bagsOf([stretch]),
        decideM: lowestM,
        decideH: finite(passesH(lowestM - designM)),
      });
    }
    before = stretch;
  }
  return found.map((hold) => ({ ...hold, bags: wholeOrder(hold.bags) }));
}

/** Middle of a part, from where its ground is lowest in each stretch. */
function middleOf(part: Part, { samples, stretches }: SequenceInputs) {
  const own = part.stretches.map((index) => stretches[index]!);
  const allM = own.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
  const mean = (values: Float64Array) =>
    own.reduce((sum, { fromM, toM, lowestSample }) => {
      return sum + (values[lowestSample]! * (toM - fromM)) / allM;
    }, 0);
  return { xM: mean(samples.xM), yM: mean(samples.yM) };
}

function bagsOf(stretches: readonly LiftedStretch[]): number {
  return stretches.flatMap(({ lifts }) => lifts).reduce((sum, { bags }) => sum + bags, 0);
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
