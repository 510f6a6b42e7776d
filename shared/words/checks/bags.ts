import {
  CAUTION_KG,
  HEAVIEST_KG_PER_M3,
  LIGHTEST_KG_PER_M3,
  TOO_HEAVY_KG,
} from "../../checks/bag.ts";
import { hasAnyData } from "../../completeness.ts";
import { CUBIC_FOOT_M3, POUND_KG } from "../../constants.ts";
import { formatCount } from "../../units.ts";
import { countedWords } from "../counted.ts";
import type { Units } from "../units.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

/** `110 lb/cu ft` or `1,762 kg/m³`. */
function density(kgPerM3: number, { system }: Units): string {
  return system === "us"
    ? `${formatCount((kgPerM3 * CUBIC_FOOT_M3) / POUND_KG)} lb/cu ft`
    : `${formatCount(kgPerM3)} kg/m³`;
}

export const BAG_TEXT: TextOf<
  "heavy-bag" | "bag-density" | "narrow-base" | "incomplete-totals" | "carpentry"
> = {
  "heavy-bag": ({ filledMassKg, overKg }, u) => ({
    what: `A filled bag of ${u.mass(filledMassKg)} is heavier than ${u.mass(overKg)}.`,
    remedy:
      "Fill bags one half to two thirds full; put the volume and weight of such a bag in Levee type and bags.",
  }),
  "bag-density": ({ kgPerM3 }, u) => ({
    what: `The bag's weight and placed volume make ${density(kgPerM3, u)}, which no sand has.`,
    remedy: "Weigh a filled bag and measure it as placed; the volume decides the number of bags.",
  }),
  "narrow-base": ({ baseRatio }) => ({
    what: `The base is ${baseRatio} times the height; twice is the published minimum and three times the advice.`,
    remedy: "Set a base ratio of 3 under Levee type and bags.",
  }),
  "incomplete-totals": ({ bags, ...extent }, u) => ({
    what: hasAnyData(extent)
      ? `The totals are not complete: ${formatCount(bags)} bags for ${countedWords(extent, u.system)}.`
      : `Nothing is counted: no elevation data under any of the ${u.distance(extent.lengthM)}.`,
    remedy:
      "Do not order by these totals. Open elevation data for the whole line, or lead the line where there is some.",
  }),
  carpentry: () => ({
    what: "The hours count bags, sand and earth. Cutting, staking, nailing and bracing of boards are not in them.",
    remedy:
      "Plan a carpentry crew and its time beside these people; no rate for it is published here.",
  }),
};

export const BAG_RULES: RulesOf<
  "heavy-bag" | "bag-density" | "narrow-base" | "incomplete-totals" | "carpentry"
> = {
  "heavy-bag": (u) => ({
    rule: `A filled bag weighs at most ${u.mass(CAUTION_KG)}; above ${u.mass(TOO_HEAVY_KG)} it is too much to lift all day.`,
    source: `EFT-94, MB (${u.mass(CAUTION_KG)}); common practice, no source (${u.mass(TOO_HEAVY_KG)})`,
  }),
  "bag-density": (u) => {
    const [low, high] = [density(LIGHTEST_KG_PER_M3, u), density(HEAVIEST_KG_PER_M3, u)];
    return {
      rule: `Weight and placed volume of a bag fit sand: ${low} to ${high}.`,
      source: "from memory (loose to saturated)",
    };
  },
  "narrow-base": rule(
    "A base at least twice as wide as the levee is high; three times is the advice.",
    "NDSU-NR (2), NDSU-11, FFO-96 (3)",
  ),
  "incomplete-totals": rule(
    "Bags, sand, people and hours are for the whole length of the line.",
    "judgement",
  ),
  carpentry: rule("The hours cover all of the work.", "judgement"),
};
