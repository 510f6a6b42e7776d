import { halfBaseAt } from "./price-table.ts";
import type { SearchTerms } from "./search-terms.ts";
import { type Shape, shapeOf, signedDistance } from "./shape.ts";
import type { FoundRing, Point } from "./types.ts";

const STEP_M = 0.5;

/**
 * Whether several rings can be built side by side: their lines are so far apart that their bases cannot
 * overlap, taking each base as wide where they are nearest as on the ring walked.
 */
export function ringsApart(terms: SearchTerms, rings: readonly FoundRing[]): boolean {
  const shapes = rings.map((ring) => shapeOf(ring.corners));
  return rings.every((ring, i) =>
    rings.every(
      (other, j) => j === i || other === ring || keepsOff(terms, ring.corners, shapes[j]!),
    ),
  );
}

function keepsOff(terms: SearchTerms, corners: readonly Point[], other: Shape): boolean {
  for (let k = 0; k < corners.length; k++) {
    const [x1, y1] = corners[k]!;
    const [x2, y2] = corners[(k + 1) % corners.length]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1) / STEP_M));
    for (let i = 0; i < steps; i++) {
      const x = x1 + (i / steps) * (x2 - x1);
      const y = y1 + (i / steps) * (y2 - y1);
      const heightM = terms.crest.at(x, y) - terms.ground.heightAt(x, y);
      if (signedDistance(other, x, y) < 2 * halfBaseAt(terms.table, Math.max(0, heightM)))
        return false;
    }
  }
  return true;
}
