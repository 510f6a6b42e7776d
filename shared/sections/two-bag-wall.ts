import { FOOT_M } from "../defaults.ts";
import { figure, twoBagsM, uprightInto } from "./figure.ts";
import { filledKgPerM3, nothingPerMetre } from "./pyramid.ts";
import type { EmergencySection } from "./types.ts";

/** The narrow wall that is often built and does not stand: shown for what it is. */
export const twoBagWall: EmergencySection = {
  id: "two-bag-wall",
  name: "Narrow wall, two bags wide",
  words:
    "Bags straight up, two wide: serves to a foot of height with clusters of bags behind it, and is not able to stand against deeper water.",
  source: "NDSU-11",
  figures: [
    figure({
      key: "widthM",
      label: "Width",
      kind: "length",
      default: twoBagsM,
      range: [0.1, 4],
      source: "NDSU-11 (bags 14 in wide), two side by side",
    }),
  ],
  fill: "bags",
  limit: {
    greatestM: 1 * FOOT_M,
    source: "NDSU-11",
    note: "A wall of up to 1 ft needs no pyramid where clusters of bags support it every 5 ft; nothing higher is published for a narrow wall.",
  },
  cautions: [
    "Set a cluster of bags against its land side every 5 ft (NDSU-11); those bags are not in the count: add them.",
    "Do not raise it: water of a few feet pushes it away. Where the river may go higher, lay the base of a pyramid from the start.",
  ],
  standsBy: "weight",
  sheet: true,
  kgPerM3: filledKgPerM3,
  shapeInto: (out, _heightM, { widthM }) => uprightInto(out, widthM!),
  perMetreInto: nothingPerMetre,
  pieces: () => [],
};
