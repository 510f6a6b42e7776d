import { COARSEST_CELL_M } from "../../checks/ground.ts";
import { OPEN_AFTER_RUNS } from "../../section.ts";
import type { Units } from "../units.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

export const GROUND_TEXT: TextOf<
  | ("no-ground" | "open-toe" | "cross-slope" | "narrow-low" | "narrow-lows" | "coarse-raster")
  | ("close-bank" | "close-end" | "tie-in" | "crosses-itself" | "ground-reading")
> = {
  "no-ground": ({ lengthM }, u) => ({
    what: `no elevation data under the levee on ${u.distance(lengthM)}. Its bags and sand are not in the totals.`,
    remedy:
      "Open elevation data that covers this stretch, lead the line around the gap, or survey the ground elevations there and add its bags by hand.",
  }),
  "open-toe": () => ({
    what: `the ground falls away as steeply as the side of the levee, which does not meet it within ${OPEN_AFTER_RUNS} times its width on flat ground. Counted only that far: the real need is larger.`,
    remedy: "Move the line back from the bank, to ground flat enough to carry a base.",
  }),
  "cross-slope": ({ fallM, heightM }, u) => ({
    what: `the ground falls by up to ${u.length(fallM)} from toe to toe under a levee ${u.length(heightM)} high.`,
    remedy:
      "Move the line to flatter ground, or step the base into the slope before the first course.",
  }),
  "narrow-low": ({ widthM, depthM }, u) => ({
    what: `a low place only ${u.length(widthM)} wide where it is ${u.length(depthM)} deep, perhaps a ditch, a culvert or a wheel track, lies between stakes.`,
    remedy: LOOK_AT_LOW,
  }),
  "narrow-lows": ({ count, stationIntervalM }, u) => ({
    what: `${count} more low places narrower than the ${u.length(stationIntervalM)} between stakes, the levee highest here: perhaps ditches, culverts or wheel tracks.`,
    remedy: LOOK_AT_LOW,
  }),
  "coarse-raster": ({ cellM }, u) => ({
    what: `The elevation data has cells of ${u.length(cellM)}: ditches, curbs and banks narrower than that are not in it.`,
    remedy:
      "Use finer elevation data if there is any, and survey the ground elevations along the line before the first bag.",
  }),
  "ground-reading": ({ differenceM, count, of, accuracyM }, u) => ({
    what: `the ground was read ${higherBy(differenceM, u)} than in the elevation data; ${count} of ${of} readings differ by more than ±${u.length(accuracyM, 2)}, the accuracy of the elevation data.`,
    remedy:
      "Read the rod again there and on the benchmark. If it is right, read the ground at every stake: the elevation data may be wrong where nobody read.",
  }),
  "close-bank": ({ aboveM, rmseM, lengthM }, u) => ({
    what: `natural ground in place of levee is above the top of levee by only ${u.length(aboveM)}, less than the accuracy of the elevation data, ±${u.length(rmseM)}.`,
    remedy: `Survey the ground elevations there, and have bags for ${u.distance(lengthM)} more.`,
  }),
  "close-end": ({ aboveM, rmseM }, u) => ({
    what: `the ground that the line ends on is above the top of levee by only ${u.length(aboveM)}, less than the accuracy of the elevation data, ±${u.length(rmseM)}.`,
    remedy: "Survey the ground elevations there, or lead this end to higher ground.",
  }),
  "tie-in": ({ endM, groundM, belowTopM, belowWater }, u) => ({
    what: `The end at ${u.station(endM)} is on ground at ${u.elevation(groundM)}, ${u.length(belowTopM)} below the top of levee. ${
      belowWater
        ? "The sized-for water goes around it."
        : "Its ground is above the sized-for water but within the freeboard."
    }`,
    remedy:
      "Lead this end on until the ground reaches the top of levee, as short and low as possible.",
  }),
  "crosses-itself": ({ firstM, secondM }, u) => ({
    what: `The line meets itself at ${u.station(firstM)} and ${u.station(secondM)}: bags there are counted twice, and what is inside is not clear.`,
    remedy: "Move the corners so that the legs lie apart.",
  }),
};

/** `0.62 ft lower`. */
function higherBy(differenceM: number, u: Units): string {
  return `${u.length(Math.abs(differenceM), 2)} ${differenceM > 0 ? "higher" : "lower"}`;
}

const LOOK_AT_LOW =
  "Look at it in the field: plug any pipe under the line, fill the low place with bags first, and set a stake in it.";

export const GROUND_RULES: RulesOf<
  | ("no-ground" | "open-toe" | "cross-slope" | "narrow-low" | "coarse-raster")
  | ("close-bank" | "tie-in" | "crosses-itself" | "ground-reading")
> = {
  "no-ground": rule(
    "Ground elevations are known everywhere under the levee; a hole in the data is never taken as ground.",
    "judgement",
  ),
  "open-toe": rule("Both sides of the levee meet the ground.", "judgement"),
  "cross-slope": rule(
    "The ground falls across the base by no more than the allowed share of the height.",
    "judgement",
  ),
  "narrow-low": rule(
    "No low place along the line is narrower than the distance between two stations.",
    "judgement",
  ),
  "coarse-raster": (u) => ({
    rule: `Cells of the elevation data are no larger than ${u.length(COARSEST_CELL_M)}.`,
    source: "judgement",
  }),
  "ground-reading": rule(
    "Ground read in the field is within the accuracy of the elevation data.",
    "judgement",
  ),
  "close-bank": rule(
    "Ground that takes the place of levee, or that a line ends on, is above the top of levee by more than the accuracy of the elevation data.",
    "judgement",
  ),
  "tie-in": rule("Both ends of an open line reach ground as high as the top of levee.", "NDSU-11"),
  "crosses-itself": rule("The line neither crosses nor touches itself.", "judgement"),
};
