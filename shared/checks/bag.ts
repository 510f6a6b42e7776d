import { PCF_KG_PER_M3, POUND_KG } from "../constants.ts";
import type { CutWalk } from "../cut-walk.ts";
import { PYRAMID } from "../sections.ts";
import { ofWholePlan, type Rule } from "./rule.ts";

/** A filled bag is no heavier. Source: EFT-94, MB. */
export const CAUTION_KG = 40 * POUND_KG;
/** Above this it is too much to lift all day. Common practice, no source. */
export const TOO_HEAVY_KG = 50 * POUND_KG;
/** Sand, dry and loose to saturated. From memory. */
export const LIGHTEST_KG_PER_M3 = 80 * PCF_KG_PER_M3;
export const HEAVIEST_KG_PER_M3 = 135 * PCF_KG_PER_M3;
const LEAST_BASE_RATIO = 2;

export type BagFinding =
  | { readonly kind: "heavy-bag"; readonly filledMassKg: number; readonly overKg: number }
  | { readonly kind: "bag-density"; readonly kgPerM3: number }
  | { readonly kind: "narrow-base"; readonly baseRatio: number };

/** Bags too heavy to pass all day. */
export const heavyBag: Rule = {
  id: "heavy-bag",
  find: ({ plan: { section }, cuts }) => {
    if (!isOfBags(cuts)) return [];
    const { filledMassKg } = section.bag;
    if (!(filledMassKg > CAUTION_KG + 1e-9)) return [];
    const isTooHeavy = filledMassKg > TOO_HEAVY_KG + 1e-9;
    return ofWholePlan(isTooHeavy ? "stop" : "caution", {
      kind: "heavy-bag",
      filledMassKg,
      overKg: isTooHeavy ? TOO_HEAVY_KG : CAUTION_KG,
    });
  },
};

/** Weight and volume of a bag that cannot both be right. */
export const bagDensity: Rule = {
  id: "bag-density",
  find: ({ plan: { section }, cuts }) => {
    if (!isOfBags(cuts)) return [];
    const kgPerM3 = section.bag.filledMassKg / section.bag.placedVolumeM3;
    if (kgPerM3 >= LIGHTEST_KG_PER_M3 && kgPerM3 <= HEAVIEST_KG_PER_M3) return [];
    return ofWholePlan("caution", { kind: "bag-density", kgPerM3 });
  },
};

/** Base narrower than the least that is published. */
export const narrowBase: Rule = {
  id: "narrow-base",
  find: ({ cuts: { reaches } }) => {
    const ratios = reaches.flatMap(({ section, figures }) =>
      section === PYRAMID ? [figures.baseRatio!] : [],
    );
    const least = Math.min(...ratios);
    return least < LEAST_BASE_RATIO - 1e-9
      ? ofWholePlan("stop", { kind: "narrow-base", baseRatio: least })
      : [];
  },
};

function isOfBags({ reaches }: CutWalk): boolean {
  return reaches.some(({ section }) => section.fill === "bags");
}
