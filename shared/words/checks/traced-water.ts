import type { PassagePlace } from "../../checks-trace/way-in.ts";
import { formatCount } from "../../units.ts";
import { listed } from "../list.ts";
import type { Units } from "../units.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

/** Ground that differs by no more than this from the source's is water as it stood at the survey. Judgement. */
const WATER_AT_SURVEY_M = 0.1;

function reachesWords(building: string | null): string {
  return building === null ? "the ground inside the ring" : `"${building}"`;
}

/** Where a passage is: at a station, around an end, or beside the line. */
function placeWords({ chainageM, roundEnd, besideM }: PassagePlace, u: Units): string {
  const station = u.station(chainageM);
  if (roundEnd) {
    return `around the end at ${station}${besideM > 0 ? `, ${u.distance(besideM)} away from it` : ""}`;
  }
  return besideM > 0 ? `${u.distance(besideM)} beside the line at ${station}` : `at ${station}`;
}

export const TRACED_TEXT: TextOf<
  | ("water-gets-in" | "hole-decides" | "hole-may-be-lower" | "overtops" | "building-wet")
  | ("if-it-fails" | "source-inside" | "crosses-water" | "not-reached" | "building-off-data")
  | ("source-above-water" | "source-off-data" | "no-water" | "low-unconnected")
  | ("hole-reached" | "coarse-trace")
> = {
  "water-gets-in": ({ place, reaches, through, line }, u) => {
    if (through.length > 0) {
      const names = listed(through.map((name) => `"${name}"`));
      return {
        what: `The water comes in through ${names} and over the ground, and reaches ${reachesWords(reaches)}.`,
        remedy: "Plug what is named, and lead the line around all that is to be protected.",
      };
    }
    const over = place.groundM === null ? "" : `, over ground at ${u.elevation(place.groundM)}`;
    return {
      what: `The water comes in ${placeWords(place, u)}${over}, and reaches ${reachesWords(reaches)}.`,
      remedy:
        line === "ring"
          ? "Lead the ring around all that is to be protected, with the water outside it."
          : "Lead the ends on until the ground reaches the top of levee, or close the line to a ring.",
    };
  },
  "hole-decides": ({ reaches }) => ({
    what: `There is no elevation data at the place marked: whether water reaches ${reachesWords(reaches)} depends on the ground there, and is not known.`,
    remedy: "Survey the ground elevations there, or open elevation data that covers it.",
  }),
  "hole-may-be-lower": ({ reaches }) => ({
    what: `There is no elevation data at the place marked: if the ground is low there, the rising water reaches ${reachesWords(reaches)} over it first.`,
    remedy: "Survey the ground elevations there, or open elevation data that covers it.",
  }),
  overtops: ({ stageM, elevationM, aboveSizedForM, over, place, early, line }, u) => {
    const level = u.elevation(elevationM);
    const at =
      stageM === null ? level : `stage ${u.length(stageM)}, which is ${level} at that place`;
    const ground =
      place.groundM === null ? "without elevation data" : `at ${u.elevation(place.groundM)}`;
    const beyond =
      over === "top"
        ? `A higher river runs over the top of levee, all along the line at about the same time; it is worst at ${u.station(place.chainageM)}, where the levee is highest.`
        : `A higher river comes in ${placeWords(place, u)}, over ground ${ground}.`;
    const lead =
      line === "ring"
        ? "lead the ring over higher ground at the place marked."
        : "lead the ends on until the ground reaches the top of levee.";
    return {
      what: `Overtops above ${at}, ${u.length(aboveSizedForM)} above the sized-for water; freeboard is not protection. ${beyond}`,
      remedy: early
        ? `The ground lets water in before the top of levee does: ${lead}`
        : "Set the stage at which people leave by the exit road and the time they need, not by this level. Watch this place first.",
    };
  },
  "building-wet": ({ building, depthM, leftByChoice }, u) => {
    const deep = depthM === null ? "" : `, ${u.length(depthM)} deep`;
    return leftByChoice
      ? {
          what: `"${building}" is left outside and will be flooded${deep}.`,
          remedy: "Clear it in time: fuel, chemicals and livestock first.",
        }
      : {
          what: `"${building}" lies outside the line, and the sized-for water reaches it${deep}.`,
          remedy: "Clear it in time, or lead the line around it.",
        };
  },
  "if-it-fails": ({ building, depthM }, u) => ({
    what: `If the levee fails, water comes suddenly and fast, up to ${u.length(depthM)} deep at "${building}".`,
    remedy:
      "Set the stage at which people leave by the exit road and the time they need, and leave then.",
  }),
  "source-inside": ({ source }) => ({
    what: `The source "${source}" lies inside the ring.`,
    remedy: "Move the mark into the river, or the ring away from it.",
  }),
  "crosses-water": ({ lengthM }, u) => ({
    what: `the line crosses water that is there already, on ${u.distance(lengthM)}.`,
    remedy: "Lead the line over ground above that water: bags cannot be laid in standing water.",
  }),
  "not-reached": ({ building, sillM, marginM, rmseM }, u) => {
    const doubt =
      marginM < rmseM
        ? `, which is less than the accuracy of the elevation data, ±${u.length(rmseM)}`
        : "";
    return {
      what: `The sized-for water does not reach "${building}" over the ground: it would above ${u.elevation(sillM)}, ${u.length(marginM)} higher${doubt}.`,
      remedy:
        "Look for culverts, drains and ditches that the elevation data does not show before relying on it.",
    };
  },
  "building-off-data": ({ building }) => ({
    what: `"${building}" lies off the elevation data: whether water reaches it is not known.`,
    remedy: "Open elevation data that covers it.",
  }),
  "source-above-water": ({ source, groundM }, u) => ({
    what: `No water comes from the source "${source}": its ground${groundM === null ? "" : ` at ${u.elevation(groundM)}`} is not below the sized-for water.`,
    remedy: "Put the mark in the river.",
  }),
  "source-off-data": ({ source }) => ({
    what: `The source "${source}" lies off the elevation data: water is taken to come over every low edge instead.`,
    remedy: "Put the mark in the river.",
  }),
  "no-water": ({ waterM }, u) => ({
    what: `No ground is under connected water at ${u.elevation(waterM)}.`,
    remedy:
      "Check stage, gauge zero, datum and the unit of the elevation data; where a source is marked, its place.",
  }),
  "low-unconnected": ({ areaM2 }, u) => ({
    what: `${u.area(areaM2)} of ground is below the water but not joined to it.`,
    remedy: "Close culverts and drains that lead there, and watch it for seepage.",
  }),
  "hole-reached": ({ holeCells, throughHoleCells, cells }) => ({
    what: `The water reaches ${formatCount(holeCells)} cells without elevation data and is taken to pass through them.${
      throughHoleCells > 0
        ? ` ${formatCount(throughHoleCells)} of the ${formatCount(cells)} wet cells are reached only that way: whether water gets there is not known.`
        : ""
    }`,
    remedy:
      "Where such a gap lies between river and building, survey the ground elevations there or open elevation data that covers it.",
  }),
  "coarse-trace": ({ cellM, resolvesLines }, u) => ({
    what: resolvesLines
      ? `The elevation data is too large to follow the water cell by cell: its area, its volume and its picture away from the plan are of cells of ${u.length(cellM)}. Buildings and lines are traced on the full cells around the plan, where every low edge of that part counts as water.`
      : `Water is traced at ${u.length(cellM)} cells, larger than a levee: whether it gets inside a line is not known.`,
    remedy: resolvesLines
      ? "Cut the elevation data to the surroundings of the plan for the finest picture."
      : "Cut the elevation data to the surroundings of the line, or plan each building on its own.",
  }),
};

const CELLS_TRACED = "16.8 million";

export const TRACED_RULES: RulesOf<
  | ("water-gets-in" | "enters-through-hole" | "overtops" | "building-wet" | "if-it-fails")
  | ("source-inside" | "crosses-water" | "not-reached" | "building-off-data" | "idle-source")
  | ("no-water" | "low-unconnected" | "hole-reached" | "coarse-trace")
> = {
  "water-gets-in": rule(
    "With the levee built to its top, the sized-for water reaches no building it is for. Ground counts as under water when it is strictly below the surface and joined to a source over such ground, corner to corner too.",
    "common practice, no source",
  ),
  "enters-through-hole": rule(
    "A gap in the elevation data is never taken as ground that water cannot pass.",
    "judgement",
  ),
  overtops: rule(
    "The level at which a rising river first reaches what the line is for, by the lowest way over ground and top of levee.",
    "common practice, no source",
  ),
  "building-wet": rule("What the line leaves outside is known to be under water.", "judgement"),
  "if-it-fails": rule(
    "People know how deep the water would be if the levee failed, and leave in time.",
    "common practice, no source",
  ),
  "source-inside": rule("Water comes from outside of a ring.", "judgement"),
  "crosses-water": (u) => ({
    rule: `The line stays out of water as it was on the day of the survey: ground joined to a marked source and no more than ${u.length(WATER_AT_SURVEY_M)} higher.`,
    source: "judgement",
  }),
  "not-reached": rule(
    "A levee is built where the sized-for water would reach a building.",
    "judgement",
  ),
  "building-off-data": rule("Every building lies on the elevation data that is open.", "judgement"),
  "idle-source": rule(
    "A marked source lies on the elevation data, below the sized-for water.",
    "judgement",
  ),
  "no-water": rule("The sized-for water covers some of the ground.", "judgement"),
  "low-unconnected": rule(
    "Ground below the surface that no water reaches over the ground may fill through culverts, drains or the soil.",
    "common practice, no source",
  ),
  "hole-reached": rule(
    "Ground without elevation data lets water through and is counted in no area.",
    "judgement",
  ),
  "coarse-trace": rule(
    `Water is traced on every cell of the elevation data up to ${CELLS_TRACED} of them.`,
    "judgement",
  ),
};
