import type { TerrainRef, VerticalUnit } from "./plan.ts";

/** What a person says a height that stands apart is: no data, or ground after all. */
export type MarkMeaning = "hole" | "ground";

/** A height in the raster's own unit, and what the person says it is. */
export interface MarkChoice {
  readonly value: number;
  readonly is: MarkMeaning;
}

/** A {@link MarkChoice} as the plan keeps it: for the file in which the value was met. */
export interface MarkAnswer extends MarkChoice {
  readonly file: TerrainRef;
}

/** A height, held by many cells or far off, that no other height comes near: missing data that no file declares? */
export interface LoneValue {
  /** In the raster's own unit. */
  readonly value: number;
  readonly unit: VerticalUnit;
  /** The raster in which it was met. */
  readonly file: TerrainRef;
  /** Cells that hold it, of those looked at. */
  readonly cells: number;
  /** Share of the cells looked at, 0..1. */
  readonly share: number;
  /** Which cells were looked at: every one, a sample, or those round the plan. */
  readonly looked: "all" | "sample" | "plan";
  readonly side: "below" | "above";
  /** Distance to the next height, metres. */
  readonly gapM: number;
}

/** A height written as decimal text and rounded to 32 bits may differ from itself by this share. */
const ROUNDING = 5e-7;
const LEAST_ROUNDING = 1e-6;

/** How far two numbers for the same height may be apart. */
export function roundingOf(value: number): number {
  return Math.max(LEAST_ROUNDING, ROUNDING * Math.abs(value));
}

export function isSameValue(a: number, b: number): boolean {
  return Math.abs(a - b) <= roundingOf(b);
}

/** Whether it has been said what a value is. */
export function isSaid(
  { value }: { readonly value: number },
  said: readonly MarkChoice[],
): boolean {
  return said.some((each) => isSameValue(value, each.value));
}

/** What was said of one of these files. */
export function choicesFor(
  answers: readonly MarkAnswer[] | undefined,
  files: readonly TerrainRef[],
): MarkChoice[] {
  return (answers ?? [])
    .filter(({ file }) => files.some((each) => isSameFile(each, file)))
    .map(({ value, is }) => ({ value, is }));
}

/** The answers with one more, in place of what was said of the same value before; null takes that back. */
export function withAnswer(
  answers: readonly MarkAnswer[] | undefined,
  { value, file }: { readonly value: number; readonly file: TerrainRef },
  is: MarkMeaning | null,
): MarkAnswer[] {
  const others = (answers ?? []).filter(
    (each) => !isSameValue(each.value, value) || !isSameFile(each.file, file),
  );
  return is === null ? others : [...others, { file, value, is }];
}

function isSameFile(a: TerrainRef, b: TerrainRef): boolean {
  return a.name === b.name && a.bytes === b.bytes;
}
