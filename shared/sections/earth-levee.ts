import { FOOT_M } from "../constants.ts";
import { figure } from "./figure.ts";
import { filledKgPerM3, nothingPerMetre } from "./pyramid.ts";
import type { EmergencySection } from "./types.ts";

/** A levee of tamped earth. */
export const earthLevee: EmergencySection = {
  id: "earth-levee",
  name: "Earth levee",
  figures: [
    figure({
      key: "crownM",
      label: "Crown",
      kind: "length",
      default: 5 * FOOT_M,
      range: [0.3, 10],
      source: "IS-280",
    }),
    figure({
      key: "runWater",
      label: "Water side, run for 1 of rise",
      kind: "ratio",
      default: 2.5,
      range: [0.5, 8],
      source: "IS-280",
    }),
    figure({
      key: "runLand",
      label: "Land side, run for 1 of rise",
      kind: "ratio",
      default: 3,
      range: [0.5, 8],
      source: "IL-RET, LSU",
    }),
  ],
  fill: "earth",
  limitM: 6 * FOOT_M,
  carriedBy: "weight",
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
