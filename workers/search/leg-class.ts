import type { SearchTerms } from "./search-terms.ts";

/**
 * Which of the site's anchors (a point inside each structure and water) a leg passes on the far side of:
 * the codes of all anchors whose ray east it crosses, taken together. Two lines between the same ends that have the
 * same class (exclusive-or over their legs) can be moved into each other without crossing an anchor an odd
 * number of times.
 */
export function legClass(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): number {
  const { anchorXM, anchorYM, anchorCode } = terms;
  let bits = 0;
  for (let k = 0; k < anchorXM.length; k++) {
    const y = anchorYM[k]!;
    if (y1 > y === y2 > y) continue;
    if (((x2 - x1) * (y - y1)) / (y2 - y1) + x1 > anchorXM[k]!) bits ^= anchorCode[k]!;
  }
  return bits;
}

/** The class of a closed line, corners interleaved: the codes of the anchors enclosed; 0 when there are none. */
export function ringClass(terms: SearchTerms, corners: Float64Array): number {
  const count = corners.length / 2;
  let bits = 0;
  for (let k = 0; k < count; k++) {
    const n = (k + 1) % count;
    bits ^= legClass(
      terms,
      corners[2 * k]!,
      corners[2 * k + 1]!,
      corners[2 * n]!,
      corners[2 * n + 1]!,
    );
  }
  return bits;
}
