import { letterOf } from "../line-letter.ts";
import type { LonLat, Structure } from "../plan.ts";

/** A corner of a building as plan drawing and stakes name it. */
export interface NamedCorner {
  /** `H1`. */
  readonly name: string;
  readonly structureId: string;
  readonly at: LonLat;
}

/**
 * Names for all corners of the buildings: a letter for each building, its corners counted along its outline. The
 * letter is the initial of the name's last word, else of its first, else the first that is free.
 */
export function namedCorners(structures: readonly Structure[]): NamedCorner[] {
  const taken = new Set<string>();
  return structures.flatMap(({ id, name, outline }) => {
    const letter = freeLetter(name, taken);
    taken.add(letter);
    return outline.map((at, i) => ({ name: `${letter}${i + 1}`, structureId: id, at }));
  });
}

function freeLetter(name: string, taken: ReadonlySet<string>): string {
  const words = name.toUpperCase().match(/[A-Z]+/g) ?? [];
  const wanted = [words.at(-1)?.[0], words[0]?.[0]].find(
    (letter) => letter !== undefined && !taken.has(letter),
  );
  if (wanted) return wanted;
  for (let i = 0; ; i++) if (!taken.has(letterOf(i))) return letterOf(i);
}
