import type { HoldingSettings } from "../plan.ts";
import { runFor } from "../section.ts";
import { SETTINGS } from "../settings.ts";
import { figure } from "./figure.ts";
import type { EmergencySection, PerMetre } from "./types.ts";

const RATIO = SETTINGS["section.baseRatio"];
const CROWN = SETTINGS["section.crownM"];

/** Base over height of a pyramid. */
export const BASE_RATIO = figure({
  key: "baseRatio",
  label: "Base over height",
  kind: "ratio",
  default: (plan) => plan.section.baseRatio,
  range: [RATIO.lowSI, RATIO.highSI],
  source: RATIO.source,
});

export const PYRAMID_CROWN = figure({
  key: "crownM",
  label: "Crown",
  kind: "length",
  default: (plan) => plan.section.crownM,
  range: [CROWN.lowSI, CROWN.highSI],
  source: CROWN.source,
});

/** Mass of a body of bags, sand or earth: the plan's own figure for the levee as built, kg/m3. */
export function filledKgPerM3({ leveeKgPerM3 }: HoldingSettings): number {
  return leveeKgPerM3;
}

/** Takes nothing beside its fill. */
export function nothingPerMetre(out: PerMetre): void {
  out.plywoodM2 = 0;
  out.lumberM = 0;
  out.boardsM = 0;
  out.stakes = 0;
}

/** The standard levee: bags laid to a base some times the height. */
export const pyramid: EmergencySection = {
  id: "pyramid",
  name: "Sandbag pyramid",
  figures: [BASE_RATIO, PYRAMID_CROWN],
  fill: "bags",
  limitM: null,
  carriedBy: "weight",
  sheet: true,
  kgPerM3: filledKgPerM3,
  shapeInto: (out, heightM, { baseRatio, crownM }) => {
    const run = runFor(baseRatio!, crownM!, heightM);
    out.crownM = crownM!;
    out.runWater = run;
    out.runLand = run;
  },
  perMetreInto: nothingPerMetre,
  pieces: () => [],
};
