import { FOOT_M } from "../defaults.ts";
import { flowDirection } from "../stage.ts";
import { ofWholePlan, type Rule } from "./rule.ts";
import { lengthWords } from "./words.ts";

const LEAST_FREEBOARD_M = FOOT_M;

/** Whether water and ground are heights over the same zero. */
export const datum: Rule = {
  id: "datum",
  rule: "Water and terrain are stated to be in the same vertical datum, or the offset between them is given.",
  source: "NWS-D, USGS-D",
  find: ({ plan: { water } }) => {
    const stated =
      water.datumNote.trim() !== "" || (water.by === "stage" && water.datumOffsetM !== null);
    const what = water.by === "stage" ? "the gauge zero" : "the water elevation";
    return stated
      ? []
      : ofWholePlan(
          "caution",
          `Nothing says that ${what} and the terrain are in the same vertical datum; they are taken as the same. Between common datums the difference can be several feet.`,
          "Find the datum of both, and give the offset or a note of where you checked it, in Water.",
        );
  },
};

/** Fall of the river without its direction. */
export const fallDirection: Rule = {
  id: "fall-direction",
  rule: "A fall of the water surface has a direction.",
  source: "USGS-F, OWRB",
  find: ({ plan, plane }) =>
    plan.water.fallPerM > 0 && flowDirection(plan.flow, plane) === null
      ? ofWholePlan(
          "stop",
          "A fall of the water surface is given but no direction: the surface is taken as level.",
          "Draw the flow on the map, from upstream to downstream, or set the fall to 0.",
        )
      : [],
};

/** Freeboard against the published least. */
export const leastFreeboard: Rule = {
  id: "freeboard",
  rule: "At least 1 ft of freeboard; some ask for 2 ft.",
  source: "NDSU-11, IS-280; 2 ft: MB, EMI-L4",
  find: ({ plan: { water } }) =>
    water.freeboardM < LEAST_FREEBOARD_M - 1e-9
      ? ofWholePlan(
          "caution",
          `The freeboard is ${lengthWords(water.freeboardM)}; at least ${lengthWords(LEAST_FREEBOARD_M)} above the forecast is asked for.`,
          "Raise the freeboard unless your own rules allow less. Waves and an uncertain forecast ask for more.",
        )
      : [],
};
