import type { CutWalk } from "../cut-walk.ts";
import { CUBIC_FOOT_M3, POUND_KG } from "../defaults.ts";
import { PYRAMID } from "../sections.ts";
import { ofWholePlan, type Rule } from "./rule.ts";
import { massWords } from "./words.ts";

const CAUTION_KG = 40 * POUND_KG;
const TOO_HEAVY_KG = 50 * POUND_KG;
const PCF = POUND_KG / CUBIC_FOOT_M3;
const LIGHTEST_KG_PER_M3 = 80 * PCF;
const HEAVIEST_KG_PER_M3 = 135 * PCF;
const LEAST_BASE_RATIO = 2;

/** Bags too heavy to pass all day. */
export const heavyBag: Rule = {
  id: "heavy-bag",
  rule: "A filled bag weighs at most 40 lb; above 50 lb it is too much to handle all day.",
  source: "EFT-94, MB (40 lb); common practice, no source (50 lb)",
  find: ({ plan: { section }, cuts }) => {
    if (!isOfBags(cuts)) return [];
    const { filledMassKg } = section.bag;
    if (!(filledMassKg > CAUTION_KG + 1e-9)) return [];
    return ofWholePlan(
      filledMassKg > TOO_HEAVY_KG + 1e-9 ? "stop" : "caution",
      `A filled bag of ${massWords(filledMassKg)} is heavier than ${massWords(filledMassKg > TOO_HEAVY_KG ? TOO_HEAVY_KG : CAUTION_KG)}.`,
      "Fill bags one half to two thirds full; put the volume and weight of such a bag in Section.",
    );
  },
};

/** Weight and volume of a bag that cannot both be right. */
export const bagDensity: Rule = {
  id: "bag-density",
  rule: "Weight and placed volume of a bag fit sand: 80 to 135 lb/cu ft.",
  source: "from memory (dry loose 90 to saturated 130 lb/cu ft)",
  find: ({ plan: { section }, cuts }) => {
    if (!isOfBags(cuts)) return [];
    const density = section.bag.filledMassKg / section.bag.placedVolumeM3;
    if (density >= LIGHTEST_KG_PER_M3 && density <= HEAVIEST_KG_PER_M3) return [];
    return ofWholePlan(
      "caution",
      `The bag's weight and placed volume make ${(density / PCF).toFixed(0)} lb/cu ft (${density.toFixed(0)} kg/m³), which no sand has.`,
      "Weigh a filled bag and measure it as placed; the volume decides the number of bags.",
    );
  },
};

/** Base narrower than the least that is published. */
export const narrowBase: Rule = {
  id: "narrow-base",
  rule: "A base at least twice as wide as the levee is high; three times is the advice.",
  source: "NDSU-NR (2), NDSU-11, FFO-96 (3)",
  find: ({ cuts: { reaches } }) => {
    const ratios = reaches.flatMap(({ section, figures }) =>
      section === PYRAMID ? [figures.baseRatio!] : [],
    );
    const least = Math.min(...ratios);
    return least < LEAST_BASE_RATIO - 1e-9
      ? ofWholePlan(
          "stop",
          `The base is ${least} times the height; twice is the published minimum and three times the advice.`,
          "Set the base ratio to 3 in Section.",
        )
      : [];
  },
};

function isOfBags({ reaches }: CutWalk): boolean {
  return reaches.some(({ section }) => section.fill === "bags");
}
