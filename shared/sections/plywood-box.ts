import { FOOT_M } from "../constants.ts";
import { board, figure, uprightInto } from "./figure.ts";
import { filledKgPerM3 } from "./pyramid.ts";
import type { EmergencySection } from "./types.ts";

const PLYWOOD_M = 0.018;
const POST_M = 0.09;
const TIE_M = 0.04;

/** Two rows of plywood with sand between them: a mud box. */
export const plywoodBox: EmergencySection = {
  id: "plywood-box",
  name: "Plywood box filled with sand",
  figures: [
    figure({
      key: "widthRatio",
      label: "Width over height",
      kind: "ratio",
      default: 2,
      range: [0.5, 5],
      source: "FFO-96",
    }),
    figure({
      key: "spacingM",
      label: "Between posts",
      kind: "length",
      default: 4 * FOOT_M,
      range: [0.3, 3],
      source: "common practice, no source",
    }),
  ],
  fill: "sand",
  limitM: null,
  carriedBy: "weight",
  sheet: false,
  kgPerM3: filledKgPerM3,
  shapeInto: (out, heightM, { widthRatio }) => uprightInto(out, widthRatio! * heightM),
  perMetreInto: (out, heightM, { widthRatio, spacingM }) => {
    out.plywoodM2 = 2 * heightM;
    out.lumberM = 2 + (widthRatio! * heightM) / spacingM!;
    out.boardsM = 0;
    out.stakes = 2 / spacingM!;
  },
  pieces: (heightM, { widthRatio }) => {
    const halfM = (widthRatio! * heightM) / 2;
    return [
      board("plywood", halfM, halfM + PLYWOOD_M, -heightM, 0),
      board("plywood", -halfM - PLYWOOD_M, -halfM, -heightM, 0),
      board("lumber", halfM + PLYWOOD_M, halfM + PLYWOOD_M + POST_M, -heightM, 0),
      board("lumber", -halfM - PLYWOOD_M - POST_M, -halfM - PLYWOOD_M, -heightM, 0),
      board("lumber", -halfM - PLYWOOD_M - POST_M, halfM + PLYWOOD_M + POST_M, 0, TIE_M),
    ];
  },
};
