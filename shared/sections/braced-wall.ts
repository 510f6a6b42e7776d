import { FOOT_M } from "../constants.ts";
import { board, brace, figure, twoBagsM, uprightInto } from "./figure.ts";
import { filledKgPerM3 } from "./pyramid.ts";
import type { EmergencySection } from "./types.ts";

/** Kickers of 2 x 4 in, 10 ft long, and stakes that stand 2 ft. Source: DWR-03 p49. */
export const KICKER_M = 10 * FOOT_M;
const PLYWOOD_M = 0.018;
export const POST_M = 0.09;
export const STAKE_SHOWS_M = 0.15;

/** Distance between braces along a wall. */
export const BRACE_SPACING = figure({
  key: "spacingM",
  label: "Between braces",
  kind: "length",
  default: 6 * FOOT_M,
  range: [0.3, 3],
  source: "DWR-03",
});

/** Width of what stands straight up in front of the braces. */
export const upright = (label: string) =>
  figure({
    key: "widthM",
    label,
    kind: "length",
    default: twoBagsM,
    range: [0.1, 4],
    source: "common practice, no source",
  });

/** What every wall has that braces carry. */
export const BRACED = {
  fill: "bags",
  limitM: 3 * FOOT_M,
  carriedBy: "bracing",
  sheet: true,
  kgPerM3: filledKgPerM3,
  shapeInto: (out, _heightM, { widthM }) => uprightInto(out, widthM!),
} as const satisfies Partial<EmergencySection>;

/** Bags straight up, with plywood behind them that braces carry. */
export const bracedWall: EmergencySection = {
  id: "braced-wall",
  name: "Braced wall of bags and plywood",
  figures: [upright("Width of the bags"), BRACE_SPACING],
  ...BRACED,
  perMetreInto: (out, heightM, { spacingM }) => {
    out.plywoodM2 = heightM;
    out.lumberM = 1 + KICKER_M / spacingM!;
    out.boardsM = 0;
    out.stakes = 2 / spacingM!;
  },
  pieces: (heightM, { widthM }) => {
    const faceM = -widthM! / 2;
    const backM = faceM - PLYWOOD_M;
    const footM = backM - POST_M - 1.5 * heightM;
    return [
      board("plywood", backM, faceM, -heightM, 0),
      board("lumber", backM - POST_M, backM, -heightM, 0),
      brace([backM - POST_M, -0.25 * heightM], [footM, -heightM], POST_M),
      board("lumber", footM - POST_M, footM, -heightM, -heightM + STAKE_SHOWS_M),
    ];
  },
};
