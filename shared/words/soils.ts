import type { Soil } from "../plan.ts";

export const SOIL_NAMES: Readonly<Record<Soil, string>> = {
  unknown: "not known",
  "fine-silt": "very fine sand or silt",
  "fine-sand": "fine sand",
  "medium-sand": "medium sand",
  "coarse-sand": "coarse sand",
  "fine-gravel": "fine gravel",
  "coarse-gravel": "coarse gravel",
  "soft-clay": "soft clay",
  "medium-clay": "medium clay",
  "hard-clay": "hard clay",
};
