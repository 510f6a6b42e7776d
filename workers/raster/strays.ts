/** Stored numbers that no ground has and that the file does not declare to mean "no data". */
export interface Strays {
  note(stored: number): void;
  /** As stored, in the order they were met; at most {@link MOST_STRAYS}. */
  readonly values: readonly number[];
}

/** More different ones than this are not marks but a raster of something else. */
const MOST_STRAYS = 4;

export function makeStrays(): Strays {
  const values: number[] = [];
  return {
    values,
    note(stored) {
      if (values.length >= MOST_STRAYS || Number.isNaN(stored) || values.includes(stored)) return;
      values.push(stored);
    },
  };
}
