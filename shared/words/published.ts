import type { PublishedCount, Totals } from "../sizing-types.ts";
import { formatCount, formatLength, grouped, lengthIn, type UnitSystem } from "../units.ts";

/** Shorter than this is a rounding, meters. */
const A_STRETCH_M = 0.5;

/** What the tables that cover the whole line say, in one line. */
export function publishedWords(
  counts: readonly PublishedCount[],
  { builtLengthM }: Pick<Totals, "builtLengthM">,
): string {
  const whole = counts.flatMap(({ bags, coveredM }) =>
    bags !== null && coveredM > builtLengthM - A_STRETCH_M ? [formatCount(bags)] : [],
  );
  return whole.length > 0
    ? `Published tables say ${whole.join(" · ")} bags. Why they differ`
    : "Published tables: none covers the whole line";
}

/** `8,027 bags`, or for how much of the line they are: `8,027 bags for 480 of 1,120 ft`. */
export function tableWords(
  { bags, coveredM }: PublishedCount,
  builtM: number,
  system: UnitSystem,
): string {
  if (bags === null) return "No answer";
  const words = `${formatCount(bags)} bags`;
  if (coveredM > builtM - A_STRETCH_M) return words;
  return `${words} for ${grouped(lengthIn(coveredM, system), 0)} of ${formatLength(builtM, system, 0)}`;
}

/** How much of the line a table leaves out; empty where nothing. */
export function beyondTableWords({ beyondM }: PublishedCount, system: UnitSystem): string {
  if (beyondM <= A_STRETCH_M) return "";
  return `${formatLength(beyondM, system, 0)} of the line is higher than it goes and is not in its count.`;
}
