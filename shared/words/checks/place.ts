import type { FittingType } from "../../checks/room.ts";
import { leveeTypeName } from "../levee-types.ts";
import type { Units } from "../units.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

/** Which levee types fit, or that none does; ends a remedy. */
function fittingWords(fits: readonly FittingType[], u: Units): string {
  if (fits.length === 0) return "No other levee type in the list fits there at this height.";
  const names = fits.map(
    ({ typeId, baseM }) => `${leveeTypeName(typeId)} (base ${u.length(baseM)})`,
  );
  return `If it cannot move, these fit there: ${names.join(", ")}; choose one for this reach in Line, and read its limits.`;
}

export const PLACE_TEXT: TextOf<
  | ("overlaps-building" | "setback" | "kept-setback" | "no-go" | "over-footprint" | "no-building")
  | ("ring-cuts" | "left-outside" | "outside" | "inside-unprotected" | "bases-overlap")
> = {
  "overlaps-building": ({ building, setbackM, fits }, u) => ({
    what: `the base of the levee overlaps "${building}".`,
    remedy: `Move the line away until the toe is at least ${u.length(setbackM)} from it. ${fittingWords(fits, u)}`,
  }),
  setback: ({ building, roomM, setbackM, fits }, u) => ({
    what: `the toe comes within ${u.length(roomM)} of "${building}"; ${u.length(setbackM)} is needed to work, watch and pump.`,
    remedy: `Move the line outward here. Never build against a basement wall. ${fittingWords(fits, u)}`,
  }),
  "kept-setback": ({ madeWithM, planM }, u) => ({
    what: `This line was made with a setback of ${u.length(madeWithM)} from buildings and is checked against that; the setback of the plan is now ${u.length(planM)}.`,
    remedy:
      "To go by the plan's setback, take it for this line in Line, or find or make the line again.",
  }),
  "no-go": ({ area }) => ({
    what: `the levee enters "${area}", which is marked as no-go.`,
    remedy: "Lead the line around it, or remove the mark if the area may be used after all.",
  }),
  "over-footprint": ({ building }) => ({
    what: `the base of the levee lies over "${building}", an imported building that is not in the plan.`,
    remedy: "Lead the line around it, or look on site whether it is still there.",
  }),
  "no-building": () => ({
    what: "No building is drawn, so the room around it is not checked.",
    remedy: "Draw or import the outline of the building.",
  }),
  "ring-cuts": ({ building }) => ({
    what: `The ring cuts through "${building}" and does not enclose it.`,
    remedy: "Lead the ring around the whole building.",
  }),
  "left-outside": ({ building }) => ({
    what: `"${building}" is left outside the ring, and is under water where the flood reaches it.`,
    remedy: "Clear it in time.",
  }),
  outside: ({ building }) => ({
    what: `"${building}" lies outside the ring.`,
    remedy: "Draw the ring around it if it is to be protected, or set it to be left outside.",
  }),
  "inside-unprotected": ({ building }) => ({
    what: `"${building}" is to be left outside, and the ring encloses it.`,
    remedy: "Draw the ring without it where that is shorter or higher.",
  }),
  "bases-overlap": ({ otherM, lengthM, fits }, u) => ({
    what: `the base lies over the base near ${u.station(otherM)}, on ${u.distance(lengthM)}. The bags and sand of the shared ground are counted twice.`,
    remedy: `Lead the two parts farther apart, or draw the line so that one levee serves for both. ${fittingWords(fits, u)}`,
  }),
};

export const PLACE_RULES: RulesOf<
  "setback" | "kept-setback" | "no-go" | "enclosure" | "bases-overlap"
> = {
  setback: rule(
    "The toe stays clear of buildings, for room to work, watch and pump, and never bears on a basement wall.",
    "NDSU-11, BDPF, SDUN, MB",
  ),
  "kept-setback": rule(
    "A line that was found, improved or offset is checked against the setback it was made with.",
    "judgement",
  ),
  "no-go": rule("The base stays out of the areas marked as no-go.", "judgement"),
  enclosure: rule("A ring encloses the building it is built for.", "judgement"),
  "bases-overlap": rule(
    "No ground carries the base of two parts of the line: its bags would be counted twice.",
    "judgement (geometry)",
  ),
};
