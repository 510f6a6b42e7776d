import type { Plan } from "./plan.ts";

const LETTERS = 26;

/** A, B ... Z, AA, AB ...: the letter of the line at a place in the list. */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % LETTERS));
  return index < LETTERS ? last : letterOf(Math.floor(index / LETTERS) - 1) + last;
}

/** The letter of a line of a plan. */
export function letterOfLine({ alignments }: Pick<Plan, "alignments">, id: string): string {
  return letterOf(alignments.findIndex((each) => each.id === id));
}
