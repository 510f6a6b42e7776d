import type { Failure } from "../failure.ts";

/** That footprints are in a grid which is not that of the elevation data. */
export function otherGrid(named: string | null, ground: string | null): Failure {
  const came = named === null ? "in a grid of their own" : `in ${named}`;
  const expected = ground === null ? "" : ` or in the grid of the elevation data, ${ground}`;
  return {
    code: "footprints/other-grid",
    message: `Expected footprints in longitude and latitude${expected}; these are ${came}, and none lies on the elevation data.`,
    remedy:
      "Export them again as GeoJSON in EPSG:4326, or open the elevation data of their place first.",
  };
}

/** Asks whether footprints that name another grid are in that of the elevation data, where some of them lie on it. */
export function gridQuestionWords(named: string, ground: string, onGround: number): string {
  const lie = onGround === 1 ? "1 lies" : `${onGround} lie`;
  return `The footprints say ${named}, the elevation data ${ground}. Taken as the grid of the elevation data, ${lie} on it.`;
}

/** That a typed place could not be read, or lies elsewhere. */
export function placeRefused(why: "unreadable" | "elsewhere", text: string): Failure {
  return why === "unreadable"
    ? {
        code: "place/unreadable",
        message: `Expected two figures, longitude and latitude or x and y of the grid; came "${text}".`,
        remedy: "Type them like -93.1874, 44.0521.",
      }
    : {
        code: "place/elsewhere",
        message: `${text} does not lie on the elevation data that is open.`,
        remedy: "Check the order, longitude first, and the minus sign of a western longitude.",
      };
}
