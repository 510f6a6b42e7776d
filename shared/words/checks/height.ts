import { BOND_TRENCH_OVER_M } from "../../checks/height.ts";
import { LEAST_FREEBOARD_M } from "../../checks/water.ts";
import { FOOT_M, INCH_M } from "../../constants.ts";
import { levelDoubtRemedy, levelDoubtWords } from "../level-doubt.ts";
import type { Units } from "../units.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

const HIGHER_GROUND =
  "Lead the line over higher ground here. If there is none, ask a licensed engineer.";
const DOUBT_THE_DATA =
  "No emergency levee is that high, so check the data first: a missing-data value that the file does not declare (-9999, 0), the vertical unit of the elevation data, and the datum and unit of the water. If all are right, ask a licensed engineer.";

/** `4 to 6 in deep and 18 to 24 in wide`. Source: NDSU-11, NDSU-97. */
function bondTrenchWords(units: Units): string {
  const deep = units.smallRange(4 * INCH_M, 6 * INCH_M);
  return `${deep} deep and ${units.smallRange(18 * INCH_M, 24 * INCH_M)} wide`;
}

export const HEIGHT_TEXT: TextOf<
  "over-limit" | "bond-trench" | "raise-over-limit" | "raise-too-narrow"
> = {
  "over-limit": ({ heightM, limitM, lengthM, doubtsData }, u) => ({
    what: `up to ${u.lengthOver(heightM, limitM)} above the lowest ground under the base, over the height limit of ${u.length(limitM)}, on ${u.distance(lengthM)}.`,
    remedy: doubtsData ? DOUBT_THE_DATA : HIGHER_GROUND,
  }),
  "bond-trench": ({ overM, lengthM }, u) => ({
    what: `over ${u.figure(overM)} high on ${u.distance(lengthM)}; on grass it can slide.`,
    remedy: `Call for utility locates, strip the sod under the base, and dig a bond trench ${bondTrenchWords(u)} along the middle before the first course.`,
  }),
  "raise-over-limit": ({ raiseM, limitM, raisedHeightM }, u) => ({
    what: `a raise of ${u.length(raiseM)} would take it over the height limit of ${u.length(limitM)}, to ${u.lengthOver(raisedHeightM, limitM)} at worst.`,
    remedy:
      "If the river may go that much higher, choose higher ground now: this cannot be raised later.",
  }),
  "raise-too-narrow": ({ raiseM, carriesM, raisedHeightM, leastBaseRatio }, u) => ({
    what: `the base is too narrow for a raise of ${u.length(raiseM)}. At worst it carries ${u.length(carriesM)}, and ${u.length(raisedHeightM)} would be required.`,
    remedy: `If a raise is likely, lay the base for the raised height from the start: at least ${leastBaseRatio} times that height.`,
  }),
};

export const HEIGHT_RULES: RulesOf<"over-limit" | "bond-trench" | "room-to-raise"> = {
  "over-limit": (u) => ({
    rule: "Nowhere higher above the ground under it than the height limit.",
    source: `common practice, no source; MO-2217: ${u.figure(3 * FOOT_M)} preferred, ${u.figure(5 * FOOT_M)} practical`,
  }),
  "bond-trench": (u) => ({
    rule: `Over about ${u.figure(BOND_TRENCH_OVER_M)}: a bond trench ${bondTrenchWords(u)}, and the sod stripped.`,
    source: "NDSU-11, NDSU-97",
  }),
  "room-to-raise": (u) => ({
    rule: "The base carries the raise that the forecast may require, within the height limit.",
    source: `NDSU-NR (base at least twice the height); common practice, no source (${u.figure(FOOT_M)} to ${u.figure(2 * FOOT_M)} more)`,
  }),
};

export const WATER_TEXT: TextOf<"freeboard" | "datum" | "fall-direction" | "water-level"> = {
  freeboard: ({ freeboardM, leastM }, u) => ({
    what: `The freeboard is ${u.length(freeboardM)}; at least ${u.figure(leastM)} is published.`,
    remedy:
      "Raise the freeboard unless your own rules allow less. Waves and an uncertain forecast need more.",
  }),
  datum: ({ of }) => ({
    what: `Nothing says that ${of === "gauge-zero" ? "the gauge zero" : "the water elevation"} and the elevation data are in the same vertical datum; they are taken as the same. Common datums can differ by several feet.`,
    remedy:
      "Find the datum of both, and give the offset, or a note of where you checked it, in Water.",
  }),
  "fall-direction": () => ({
    what: "The water surface has a fall but no direction, so it is taken as level.",
    remedy: "Draw the flow on the map, from upstream to downstream, or set the fall to 0.",
  }),
  "water-level": ({ doubt }, u) => ({
    what: levelDoubtWords(doubt, u),
    remedy: levelDoubtRemedy(doubt),
  }),
};

export const WATER_RULES: RulesOf<"freeboard" | "datum" | "fall-direction" | "water-level"> = {
  freeboard: (u) => ({
    rule: `At least ${u.figure(LEAST_FREEBOARD_M)} of freeboard; some require ${u.figure(2 * FOOT_M)}.`,
    source: `NDSU-11, IS-280; ${u.figure(2 * FOOT_M)}: MB, EMI-L4`,
  }),
  datum: rule(
    "Water and elevation data are stated to be in the same vertical datum, or the offset between them is given.",
    "NWS-D, USGS-D",
  ),
  "fall-direction": rule("A fall of the water surface has a direction.", "USGS-F, OWRB"),
  "water-level": rule(
    "Some ground on the line is below the sized-for water, by a height that can be built against.",
    "judgement",
  ),
};
