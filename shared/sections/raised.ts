import { FOOT_M } from "../constants.ts";
import { runFor } from "../section.ts";
import { SETTINGS } from "../settings.ts";
import { figure } from "./figure.ts";
import { BASE_RATIO, filledKgPerM3, nothingPerMetre, PYRAMID_CROWN } from "./pyramid.ts";
import type { EmergencySection, SectionFigures } from "./types.ts";

const LEAST = SETTINGS["section.leastBaseRatio"];

/** Height of what stands already at a place where the crest is `heightM` above the ground. */
function earlierHeightM(heightM: number, { raiseM }: SectionFigures): number {
  return Math.max(0, heightM - raiseM!);
}

/** A pyramid that is raised: the base stays as it was built, and is widened only where it would get too narrow. */
export const raised: EmergencySection = {
  id: "raised",
  name: "Raised sandbag levee",
  figures: [
    figure({
      key: "raiseM",
      label: "Raised by",
      kind: "length",
      default: 1 * FOOT_M,
      range: [0.05, 3],
      source: "common practice, no source",
    }),
    { ...BASE_RATIO, label: "Base over height as first built" },
    figure({
      key: "leastBaseRatio",
      label: "Least base over height when raised",
      kind: "ratio",
      default: (plan) => plan.section.leastBaseRatio,
      range: [LEAST.lowSI, LEAST.highSI],
      source: LEAST.source,
    }),
    PYRAMID_CROWN,
  ],
  fill: "bags",
  limitM: null,
  carriedBy: "weight",
  sheet: true,
  kgPerM3: filledKgPerM3,
  shapeInto: (out, heightM, figures) => {
    const { baseRatio, leastBaseRatio, crownM } = figures;
    const builtM = baseRatio! * earlierHeightM(heightM, figures);
    const baseM = Math.max(builtM, leastBaseRatio! * heightM);
    const run = heightM > 0 ? runFor(baseM / heightM, crownM!, heightM) : 0;
    out.crownM = crownM!;
    out.runWater = run;
    out.runLand = run;
  },
  earlierInto: (out, heightM, figures) => {
    const { baseRatio, crownM, raiseM } = figures;
    const run = runFor(baseRatio!, crownM!, earlierHeightM(heightM, figures));
    out.crownM = crownM!;
    out.runWater = run;
    out.runLand = run;
    return raiseM!;
  },
  perMetreInto: nothingPerMetre,
  pieces: () => [],
};
