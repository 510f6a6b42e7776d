import { inSentence, leveeTypeText } from "../levee-types.ts";
import { stretchWords } from "../where.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

export const TYPE_TEXT: TextOf<
  "type-limit" | "type-cautions" | "types-meet" | "bracing-not-calculated"
> = {
  "type-limit": ({ typeId, heightM, limitM, lengthM }, u) => {
    const { name, limit } = leveeTypeText(typeId, u);
    return {
      what: `${inSentence(name)}, up to ${u.lengthOver(heightM, limitM)} high on ${u.distance(lengthM)}, over its height limit of ${u.length(limitM)}. ${limit.note}`,
      remedy:
        "Choose another levee type for this reach, or lead it over higher ground. If there is neither, ask a licensed engineer.",
      source: limit.source,
    };
  },
  "type-cautions": ({ typeId, reachesM }, u) => {
    const { name, about, cautions, source } = leveeTypeText(typeId, u);
    const reaches = reachesM.map(([fromM, toM]) => stretchWords({ fromM, toM }, u));
    const where = reaches.length > 0 ? reaches.join(", ") : "the whole line";
    return { what: `${name}, ${where}: ${inSentence(about)}`, remedy: cautions.join(" "), source };
  },
  "types-meet": ({ beforeId, afterId }, u) => {
    const [before, after] = [beforeId, afterId].map((id) => inSentence(leveeTypeText(id, u).name));
    return {
      what: `here ${before} meets ${after}. Water finds its way through such a seam first; the bags of the lap are not in the count.`,
      remedy:
        "Run the wider one past the end of the other and lap them on its water side, key bags into both, carry the poly sheeting over the seam, and watch it.",
    };
  },
  "bracing-not-calculated": ({ typeId, lengthM }, u) => ({
    what: `${inSentence(leveeTypeText(typeId, u).name)} on ${u.distance(lengthM)} depends on its bracing, which is not calculated here: no factor against sliding or overturning is given, and the weakest place of the line is found without it.`,
    remedy:
      "Have a licensed engineer size posts, braces and stakes for the water and the soil here, as the local code requires, or choose a levee type that depends on its weight.",
  }),
};

export const TYPE_RULES: RulesOf<
  "type-limit" | "type-cautions" | "types-meet" | "bracing-not-calculated"
> = {
  "type-limit": rule(
    "No reach is higher than the height limit of its levee type.",
    "NDSU-11, FFO-96, EMI-L4, F312, IS-280; judgement where none is published",
  ),
  "type-cautions": rule(
    "Each levee type is built as its sources require.",
    "NDSU-11, DWR-03, FFO-96, EMI-L4, IS-280, IL-RET; common practice, no source",
  ),
  "types-meet": rule(
    "Where two levee types meet they are lapped and tied, so that no seam is left open.",
    "common practice, no source",
  ),
  "bracing-not-calculated": rule(
    "What depends on bracing is judged by somebody who can calculate it.",
    "judgement; FEMA P-259, from memory",
  ),
};
