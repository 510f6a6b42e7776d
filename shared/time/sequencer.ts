import { type CrewPacing, doneAfter } from "./crew-pace.ts";
import { type Division, divider, type Part, type StepFigures, type StepsScore } from "./divider.ts";
import { evenGroups } from "./even-stretches.ts";
import type { LiftedStretch } from "./stretches.ts";

/** What parts are balanced by. */
interface Balance {
  readonly pacing: CrewPacing;
  /** Hours from the start after which so many hours have been worked. */
  readonly clock: (workedH: number) => number;
  /** The forecast; null without one. */
  readonly river: River | null;
}

/** When the forecast's water comes. Hours are counted from the start of work. */
export interface River {
  /** When the water passes a level above the design water; Infinity where it does not. */
  readonly passesH: (levelM: number) => number;
  /** Its last row. */
  readonly endH: number;
}

export interface SequencerInputs {
  readonly stretches: readonly LiftedStretch[];
  readonly crews: number;
  readonly liftM: number;
  readonly marginM: number;
  readonly lengthM: number;
  readonly closed: boolean;
}

/** Divides one line among its crews. */
export interface Sequencer {
  /** Crews that have work: no more than there are stretches to build, and one at least. */
  readonly crews: number;
  /**
   * The parts for which the least margin to the water that needs a step, over all steps, is greatest. Steps that
   * the forecast does not reach count as needed by its end, where they make no other step late. Of equals those of
   * which the last bag is laid soonest; without a forecast these alone; without a crew parts of equal bags.
   */
  divide(balance: Balance | null): readonly Part[];
  /**
   * The least bags an hour of one crew with which some division has every step done before the water that needs it;
   * Infinity where no pace is enough, 0 where nothing is due.
   * @param dueH hours worked until a level is passed; Infinity where it is not
   */
  leastPace(setUpH: number, dueH: (levelM: number) => number): number;
}

/**
 * How many groups of level ground a crew has at most: each is tried, for fewer are less walking and more are nearer
 * to the water. More rows than the last makes are too many to lead by. Source: judgement.
 */
const GROUPS_FOR_EACH_CREW = [2, 3, 4] as const;
/** Hours that are the same. */
const SLACK_H = 1e-6;

export function sequencer(inputs: SequencerInputs): Sequencer {
  const { stretches, closed, liftM } = inputs;
  const toBuild = stretches.filter(({ isOnHold }) => !isOnHold).length;
  const crews = Math.max(1, Math.min(inputs.crews, toBuild));
  const groupings = GROUPS_FOR_EACH_CREW.map((most) =>
    evenGroups(stretches, most * crews, liftM, closed),
  );
  const dividers = groupings
    .filter((groups, k) => groups.join() !== groupings[k - 1]?.join())
    .map((groups) => divider({ ...inputs, groups }, crews, closed));
  return {
    crews,
    divide(balance) {
      const scores = balance ? scoresBy(balance) : [fewestBags];
      const found = dividers.map((divide) => divide(scores));
      return found.reduce((best, each) => (isBetter(each, best) ? each : best)).parts;
    },
    leastPace(setUpH, dueH) {
      const slowest: StepsScore = ({ needM, bagsUpTo, movedH }) => {
        let pace = 0;
        for (let k = 0; k < needM.length; k++) {
          const leftH = dueH(needM[k]!) - setUpH - movedH[k]!;
          if (!(leftH > 0)) return Number.NEGATIVE_INFINITY;
          pace = Math.max(pace, bagsUpTo[k]! / leftH);
        }
        return -pace;
      };
      const paces = dividers.map((divide) => -(divide([slowest]).least[0] ?? 0));
      return Math.min(...paces);
    },
  };
}

/** True where the first score that differs is greater. */
function isBetter(one: Division, other: Division): boolean {
  const differs = one.least.findIndex((least, k) => Math.abs(least - other.least[k]!) > SLACK_H);
  return differs >= 0 && one.least[differs]! > other.least[differs]!;
}

const fewestBags: StepsScore = ({ bagsUpTo }) => -bagsUpTo.at(-1)!;

/** How late its worst step is, then its least margin, then its last bag. */
function scoresBy({ pacing, clock, river }: Balance): StepsScore[] {
  const lastBag: StepsScore = ({ bagsUpTo, movedH }) =>
    -doneAfter(bagsUpTo.at(-1)!, movedH.at(-1)!, pacing);
  if (!river) return [lastBag];
  const least = ({ needM, bagsUpTo, movedH }: StepFigures, latestH: number) => {
    let marginH = Number.POSITIVE_INFINITY;
    for (let k = 0; k < needM.length; k++) {
      const dueH = Math.min(river.passesH(needM[k]!), latestH);
      if (dueH === Number.POSITIVE_INFINITY) continue;
      marginH = Math.min(marginH, dueH - clock(doneAfter(bagsUpTo[k]!, movedH[k]!, pacing)));
    }
    return marginH;
  };
  return [
    (steps) => Math.min(0, least(steps, Number.POSITIVE_INFINITY)),
    (steps) => least(steps, river.endH),
    lastBag,
  ];
}
