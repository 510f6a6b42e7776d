import type { LiftedStretch } from "./stretches.ts";

/** A lift done: hours from the start of work. */
interface DoneLift {
  readonly stretch: number;
  readonly topM: number;
  readonly bags: number;
  readonly crew: number;
  readonly startH: number;
  readonly finishH: number;
}

export interface Schedule {
  /** For each stretch its lifts in order. */
  readonly byStretch: readonly (readonly DoneLift[])[];
  readonly finishH: number;
}

export interface Pacing {
  readonly bagsPerH: number;
  readonly crews: number;
  readonly setUpH: number;
  /** Hours from the start after which so many hours have been worked. */
  readonly clock: (workedH: number) => number;
}

interface Job {
  readonly stretch: number;
  readonly lift: number;
  readonly topM: number;
  readonly bags: number;
}

/**
 * Gives lifts to crews in the order of their level against the water, lowest ground first within a level;
 * whoever is free takes the next one, and a lift waits for the one below it. Source: common practice, no
 * source (lowest ground first).
 */
export function scheduleWork(stretches: readonly LiftedStretch[], pacing: Pacing): Schedule {
  const freeAt = new Array<number>(pacing.crews).fill(pacing.setUpH);
  const readyAt = new Array<number>(stretches.length).fill(pacing.setUpH);
  const byStretch: DoneLift[][] = stretches.map(() => []);
  const crewBagsPerH = pacing.bagsPerH / pacing.crews;
  let lastH = 0;
  for (const { stretch, topM, bags } of jobsInOrder(stretches)) {
    const crew = freeAt.indexOf(Math.min(...freeAt));
    const start = Math.max(freeAt[crew]!, readyAt[stretch]!);
    const finish = start + bags / crewBagsPerH;
    freeAt[crew] = finish;
    readyAt[stretch] = finish;
    lastH = Math.max(lastH, finish);
    const [startH, finishH] = [pacing.clock(start), pacing.clock(finish)];
    byStretch[stretch]!.push({ stretch, topM, bags, crew: crew + 1, startH, finishH });
  }
  return { byStretch, finishH: lastH > 0 ? pacing.clock(lastH) : 0 };
}

/** Places of the stretches in the order of building, lowest ground first: `order[k]` is the k-th stretch. */
export function buildOrder(stretches: readonly LiftedStretch[]): number[] {
  return stretches
    .map((_, index) => index)
    .sort((a, b) => stretches[a]!.lowestM - stretches[b]!.lowestM || a - b);
}

function jobsInOrder(stretches: readonly LiftedStretch[]): Job[] {
  const rank = new Map(buildOrder(stretches).map((stretch, place) => [stretch, place]));
  return stretches
    .flatMap(({ lifts }, stretch) =>
      lifts.map(({ topM, bags }, lift): Job => ({ stretch, lift, topM, bags })),
    )
    .sort((a, b) => {
      const level = a.topM - b.topM;
      if (Math.abs(level) > 1e-6) return level;
      return rank.get(a.stretch)! - rank.get(b.stretch)! || a.lift - b.lift;
    });
}
