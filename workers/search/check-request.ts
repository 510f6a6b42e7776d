import { Refusal } from "../../shared/failure.ts";
import { contains, signedArea } from "./shape.ts";
import type { SearchRequest } from "./types.ts";

const LEAST_AREA_M2 = 0.5;
const MOST_ACROSS_M = 2000;

/** What makes a request impossible to search for, before any ground is read; null when nothing does. */
export function asksTooMuch(request: SearchRequest): Refusal | null {
  const { structures, window } = request;
  if (structures.length === 0) {
    return new Refusal(
      "site/no-structure",
      "A ring is looked for around a building, and none is chosen.",
      "Draw the footprint of the building, or open a plan that has one.",
    );
  }
  const flat = structures.some(
    (outline) => outline.length < 3 || !(Math.abs(signedArea(outline)) >= LEAST_AREA_M2),
  );
  if (flat) {
    return new Refusal(
      "site/flat-structure",
      "The outline of a building should enclose some ground; this one has fewer than three corners or no area.",
      "Draw the footprint again.",
    );
  }
  if ("outline" in window) {
    const outside = structures.flat().some(([x, y]) => !contains(window.outline, x, y));
    if (!outside) return null;
    return new Refusal(
      "site/window-misses-structure",
      "The search window should include the whole building; part of it lies outside.",
      "Draw the window around the building with room for the line, or use one of the fixed widths.",
    );
  }
  const across = spread(structures.flat()) + 2 * window.reachM;
  if (across <= MOST_ACROSS_M) return null;
  return new Refusal(
    "site/too-wide",
    "The buildings and the search window spread over {0}; at most {1} can be searched at once.",
    "Choose fewer buildings or a smaller search window.",
    {
      figures: [
        { as: "distance", m: across },
        { as: "distance", m: MOST_ACROSS_M },
      ],
    },
  );
}

function spread(points: readonly (readonly [number, number])[]): number {
  const xs = points.map((each) => each[0]);
  const ys = points.map((each) => each[1]);
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}
