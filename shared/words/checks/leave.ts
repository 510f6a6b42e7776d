import { LEAVE_NOT_SET } from "../leave.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

export const LEAVE_TEXT: TextOf<"leave-not-set" | "leave-above-sized"> = {
  "leave-not-set": () => ({
    what: `${LEAVE_NOT_SET}.`,
    remedy:
      "Set the stage or the hour at which people leave, by the exit road and the time people need to get out.",
  }),
  "leave-above-sized": ({ aboveM }, u) => ({
    what: `The leave stage is ${u.length(aboveM)} above the sized-for water: people would still be there when the levee is at its limit.`,
    remedy: "Set it lower, by the exit road and the time people need to get out.",
  }),
};

export const LEAVE_RULES: RulesOf<"leave"> = {
  leave: rule(
    "The stage at which people leave is set before the work starts, by the exit road and the time people need.",
    "LSU, FFO-96",
  ),
};
