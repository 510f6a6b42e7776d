import type { CrewStep } from "./crew-steps.ts";

/** How fast one crew works. */
export interface CrewPacing {
  /** Bags one crew fills and lays in an hour. */
  readonly bagsPerH: number;
  /** Hours before the first bag. */
  readonly setUpH: number;
}

/** Hours worked until a step is done. */
export function doneAt({ bagsUpTo, movedH }: CrewStep, pacing: CrewPacing): number {
  return doneAfter(bagsUpTo, movedH, pacing);
}

/** Hours worked until a step is begun. */
export function begunAt({ bagsUpTo, bags, movedH }: CrewStep, pacing: CrewPacing): number {
  return doneAfter(bagsUpTo - bags, movedH, pacing);
}

/** Hours worked until so many bags are laid, having moved for so many hours. */
export function doneAfter(bags: number, movedH: number, pacing: CrewPacing): number {
  return pacing.setUpH + movedH + bags / pacing.bagsPerH;
}
