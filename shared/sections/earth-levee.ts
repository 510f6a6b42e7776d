import { FOOT_M } from "../defaults.ts";
import { figure } from "./figure.ts";
import { filledKgPerM3, nothingPerMetre } from "./pyramid.ts";
import type { EmergencySection } from "./types.ts";

/** A levee of tamped earth. */
export const earthLevee: EmergencySection = {
  id: "earth-levee",
  name: "Earth levee",
  words:
    "Earth tamped in layers, flatter than bags: where there is room, earth and plant for it, and no bags to spare.",
  source: "IS-280, IL-RET, LSU",
  figures: [
    figure({
      key: "crownM",
      label: "Crown",
      kind: "length",
      default: 5 * FOOT_M,
      range: [0.3, 10],
      source: "IS-280",
      note: "Sources disagree: at least 5 ft (IS-280), 3 ft (LSU), 10 to 12 ft to drive on (EM1913-78).",
    }),
    figure({
      key: "runWater",
      label: "Water side, run for 1 of rise",
      kind: "ratio",
      default: 2.5,
      range: [0.5, 8],
      source: "IS-280",
      note: "2.5 (IS-280); 3 on both sides (LSU); clay 2, sand 3 (IL-RET).",
    }),
    figure({
      key: "runLand",
      label: "Land side, run for 1 of rise",
      kind: "ratio",
      default: 3,
      range: [0.5, 8],
      source: "IL-RET, LSU",
      note: "Clay 2, sand 3 (IL-RET); 3 is taken until the earth is known to be clay.",
    }),
  ],
  fill: "earth",
  limit: {
    greatestM: 6 * FOOT_M,
    source: "F312, IS-280",
    note: "Flood of at most 5 ft for a levee (F312) and 1 ft of freeboard; IS-280 prints 6 ft of settled height.",
  },
  cautions: [
    "Strip all sod and place the earth in thin layers, each tamped (IL-RET): loose earth washes away.",
    "Cover its water side with sheet held by bags before waves or current reach it; that sheet is not in the count.",
    "Keep heavy plant off a wet crown (FFO-96), and follow the local code: earthworks often need a permit and a licensed engineer.",
  ],
  standsBy: "weight",
  sheet: false,
  kgPerM3: filledKgPerM3,
  shapeInto: (out, _heightM, { crownM, runWater, runLand }) => {
    out.crownM = crownM!;
    out.runWater = runWater!;
    out.runLand = runLand!;
  },
  perMetreInto: nothingPerMetre,
  pieces: () => [],
};
