import { type Refusal, refusal } from "../../shared/failure.ts";
import { contains, signedArea } from "./shape.ts";
import type { SearchRequest } from "./types.ts";

const LEAST_AREA_M2 = 0.5;
const MOST_ACROSS_M = 2000;

/** What makes a request impossible to search for, before any ground is read; null when nothing does. */
export function asksTooMuch(request: SearchRequest): Refusal | null {
  const { structures, window } = request;
  if (structures.length === 0) return refusal("site/no-structure", { ofPlan: false });
  const flat = structures.some(
    (outline) => outline.length < 3 || !(Math.abs(signedArea(outline)) >= LEAST_AREA_M2),
  );
  if (flat) return refusal("site/flat-structure");
  if ("outline" in window) {
    const outside = structures.flat().some(([x, y]) => !contains(window.outline, x, y));
    if (!outside) return null;
    return refusal("site/window-misses-structure");
  }
  const acrossM = spread(structures.flat()) + 2 * window.reachM;
  if (acrossM <= MOST_ACROSS_M) return null;
  return refusal("site/too-wide", { acrossM, mostM: MOST_ACROSS_M });
}

function spread(points: readonly (readonly [number, number])[]): number {
  const xs = points.map((each) => each[0]);
  const ys = points.map((each) => each[1]);
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}
