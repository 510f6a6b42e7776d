import { FOOT_M } from "../constants.ts";
import { figure, twoBagsM, uprightInto } from "./figure.ts";
import { filledKgPerM3, nothingPerMetre } from "./pyramid.ts";
import type { EmergencySection } from "./types.ts";

/** The narrow wall that is often built and does not stand: shown for what it is. */
export const twoBagWall: EmergencySection = {
  id: "two-bag-wall",
  name: "Narrow wall, two bags wide",
  figures: [
    figure({
      key: "widthM",
      label: "Width",
      kind: "length",
      default: twoBagsM,
      range: [0.1, 4],
      source: "NDSU-11 (width of its bags), two side by side",
    }),
  ],
  fill: "bags",
  limitM: 1 * FOOT_M,
  carriedBy: "weight",
  sheet: true,
  kgPerM3: filledKgPerM3,
  shapeInto: (out, _heightM, { widthM }) => uprightInto(out, widthM!),
  perMetreInto: nothingPerMetre,
  pieces: () => [],
};
