import { roadFloodWords } from "../roads.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

export const ROAD_TEXT: TextOf<"road-floods" | "road-not-known"> = {
  "road-floods": ({ leavesBefore, ...flood }, u) => {
    if (flood.fromStart) {
      return {
        what: `${roadFloodWords(flood, u.system)}.`,
        remedy: "Find another way out, draw it, and have people leave before it floods.",
      };
    }
    const late = leavesBefore === false ? " People are set to leave later than that." : "";
    return {
      what: `${roadFloodWords(flood, u.system)}.${late} Rain and waves can put it under water earlier.`,
      remedy: leavesBefore
        ? "Leave by then, earlier by the time people need to get out."
        : "Set the leave stage below that, by the time people need to get out.",
    };
  },
  "road-not-known": ({ road }) => ({
    what: `It is not known when exit road "${road}" floods: part of it has no elevation data, or a pipe there is not known.`,
    remedy: "Open elevation data that covers it, or ask the road department for its low point.",
  }),
};

export const ROAD_RULES: RulesOf<"exit-road"> = {
  "exit-road": rule(
    "People leave before connected water, with nothing built, first reaches the exit road. Draw the road without its bridges: the elevation data has the water under them.",
    "LSU, FFO-96; how it is calculated: judgement",
  ),
};
