import type { Failure } from "../failure.ts";

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
