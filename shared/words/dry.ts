import type { DryVerdict } from "../water-types.ts";

const BECAUSE: Readonly<Record<NonNullable<DryVerdict["notKnown"]>["because"], string>> = {
  "no-building": "no building on the elevation data",
  "building-off-data": "a building lies off the elevation data",
  "hole-in-the-way": "water may come over a gap in the elevation data",
  "pipe-not-known": "water may come through a culvert or drain that is not known",
  "no-water": "no ground around the plan is under this water",
  "coarse-cells": "water is traced in cells larger than the levee",
  "hole-under-line": "part of the line has no elevation data",
};

/** Why it is not known whether water gets to what a line is for: `part of the line has no elevation data`. */
export function notKnownBecause({ notKnown }: Pick<DryVerdict, "notKnown">): string {
  return notKnown ? BECAUSE[notKnown.because] : "";
}

/** In the place of a verdict where it is not known whether water gets in, as before it is traced. */
export const WATER_NOT_KNOWN = "water not known";
