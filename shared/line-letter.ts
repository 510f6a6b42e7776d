const LETTERS = 26;

/** A, B ... Z, AA, AB ...: the letter of the line at a place in the list. */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % LETTERS));
  return index < LETTERS ? last : letterOf(Math.floor(index / LETTERS) - 1) + last;
}
