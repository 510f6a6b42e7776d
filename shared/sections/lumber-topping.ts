import { FOOT_M } from "../constants.ts";
import { BRACE_SPACING, BRACED, KICKER_M, POST_M, STAKE_SHOWS_M, upright } from "./braced-wall.ts";
import { board, brace } from "./figure.ts";
import type { EmergencySection } from "./types.ts";

/** Boards lie edge on edge, 12 in high. Source: DWR-03 (1 x 12 in boards, p47). */
const BOARD_HEIGHT_M = 1 * FOOT_M;
const BOARD_M = 0.025;

/** Boards on stakes, backed with sacks: what is put on a levee that is too low. */
export const lumberTopping: EmergencySection = {
  id: "lumber-topping",
  name: "Lumber and sack topping",
  figures: [upright("Width of the sacks"), BRACE_SPACING],
  ...BRACED,
  perMetreInto: (out, heightM, { spacingM }) => {
    out.plywoodM2 = 0;
    out.lumberM = KICKER_M / spacingM!;
    out.boardsM = heightM / BOARD_HEIGHT_M;
    out.stakes = 2 / spacingM!;
  },
  pieces: (heightM, { widthM }) => {
    const faceM = widthM! / 2;
    const postM = faceM + BOARD_M;
    const footM = -faceM - heightM;
    return [
      board("lumber", faceM, postM, -heightM, 0),
      board("lumber", postM, postM + POST_M, -heightM, 0),
      brace([-faceM, -0.25 * heightM], [footM, -heightM], POST_M),
      board("lumber", footM - POST_M, footM, -heightM, -heightM + STAKE_SHOWS_M),
    ];
  },
};
