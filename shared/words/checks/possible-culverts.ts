import { reachedWords } from "./pipes.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

export const POSSIBLE_CULVERT_TEXT: TextOf<
  "culverts-possible" | "culvert-to-look-for" | "reached-if-culvert" | "let-in-if-culvert"
> = {
  "culverts-possible": ({ count, bankM, sagDepthM }, u) => ({
    what: `Near the plan the ground looks as it does at a culvert in ${count === 1 ? "1 place" : `${count} places`}: a low place ${u.length(sagDepthM)} deep in front of a bank ${u.length(bankM)} high${count === 1 ? "" : " (the nearest)"}, and a lower channel or plain behind it. No pipe there is counted.`,
    remedy: "Answer each under Water: a culvert, none, or look in the field.",
  }),
  "culvert-to-look-for": ({ place }) => ({
    what: `"${place}" is still to be looked at: whether a pipe goes through the bank is not known, and none is counted.`,
    remedy: "Look at both ends in the field, then answer it under Water.",
  }),
  "reached-if-culvert": ({ reaches }) => ({
    what: `If a pipe goes through a bank near the plan, the sized-for water reaches ${reachedWords(reaches)}. Nobody has said that there is none.`,
    remedy: LOOK,
  }),
  "let-in-if-culvert": ({ isWet, reaches, elevationM, stageM }, u) => {
    const level = stageM === null ? u.elevation(elevationM) : `stage ${u.length(stageM)}`;
    const what = isWet
      ? `the sized-for water reaches ${reachedWords(reaches)} with the levee built`
      : `the water comes in above ${level} with the levee built`;
    return {
      what: `If a pipe goes through a bank near the plan, ${what}. Nobody has said that there is none.`,
      remedy: LOOK,
    };
  },
};

const LOOK =
  "Look at both ends of each place marked before relying on that bank; answer under Water, and plug what is found.";

export const POSSIBLE_CULVERT_RULES: RulesOf<"possible-culvert"> = {
  "possible-culvert": rule(
    "Elevation data shows banks, not the pipes through them. Where a low place in front of a bank has a lower channel or plain behind it, someone looks for a culvert.",
    "how such places are found: judgement",
  ),
};
