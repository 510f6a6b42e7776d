import { bestCuts, type Cuts, type PartScore } from "./best-cuts.ts";
import { type CrewStep, crewSteps, type StepInputs } from "./crew-steps.ts";

/** One crew's continuous part of the line. */
export interface Part {
  /** Stretches by index, in the order of the part; those on HOLD are among them. */
  readonly stretches: readonly number[];
  readonly steps: readonly CrewStep[];
}

/** What a crew's steps are judged by, in their order; each as in a {@link CrewStep}. */
export interface StepFigures {
  readonly needM: Float64Array;
  readonly bagsUpTo: Float64Array;
  readonly movedH: Float64Array;
}

/** How good a part is for one crew by its steps, the more the better. */
export type StepsScore = (steps: StepFigures) => number;

/** The best division by each score in turn. */
export interface Division {
  readonly parts: readonly Part[];
  /** The least of each score over the parts. */
  readonly least: readonly number[];
}

/** Crews' parts begin at no more places than this. */
const MOST_PLACES = 60;
const NO_WORK: Cuts = { starts: [0], least: [] };

/**
 * Divides a line whose steps are given by its groups, by scores that may be asked for again and again. Fewer crews
 * get a part where there is not work in so many places; all is one part where there is none at all.
 */
export function divider(
  inputs: StepInputs,
  crews: number,
  closed: boolean,
): (scores: readonly StepsScore[]) => Division {
  const total = inputs.stretches.length;
  const each = Math.max(1, Math.ceil(total / MOST_PLACES));
  const places = { count: Math.ceil(total / each), isRing: closed };
  const known = new Map<number, StepFigures>();

  function stretchCount(first: number, size: number): number {
    const before = (place: number) =>
      place <= places.count
        ? Math.min(place * each, total)
        : total + Math.min((place - places.count) * each, total);
    return before(first + size) - before(first);
  }

  const stepsFor = (first: number, size: number) =>
    crewSteps(inputs, first * each, stretchCount(first, size));

  function figuresFor(first: number, size: number): StepFigures {
    const key = first * (places.count + 1) + size;
    const found = known.get(key) ?? figuresOf(stepsFor(first, size));
    known.set(key, found);
    return found;
  }

  const scored =
    (score: StepsScore): PartScore =>
    (first, size) => {
      const figures = figuresFor(first, size);
      return figures.needM.length === 0 ? Number.NaN : score(figures);
    };

  function cutsFor(scores: readonly PartScore[]): Cuts {
    for (let count = Math.min(crews, places.count); count > 0; count--) {
      const found = bestCuts(places, count, scores);
      if (found) return found;
    }
    return NO_WORK;
  }

  return (scores) => {
    if (total === 0) return { parts: [], least: [] };
    const { starts, least } = cutsFor(scores.map(scored));
    const endOfLast = places.count + (closed ? (starts[0] ?? 0) : 0);
    const parts = starts.map((first, k): Part => {
      const size = (starts[k + 1] ?? endOfLast) - first;
      const stretches = Array.from(
        { length: stretchCount(first, size) },
        (_, i) => (first * each + i) % total,
      );
      return { stretches, steps: stepsFor(first, size) };
    });
    return { parts, least };
  };
}

function figuresOf(steps: readonly CrewStep[]): StepFigures {
  return {
    needM: Float64Array.from(steps, ({ needM }) => needM),
    bagsUpTo: Float64Array.from(steps, ({ bagsUpTo }) => bagsUpTo),
    movedH: Float64Array.from(steps, ({ movedH }) => movedH),
  };
}
