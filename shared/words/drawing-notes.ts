import type { DrawingGrid, DrawingUnit } from "../exports/drawing-grid.ts";
import type { Exported } from "../exports/exported.ts";
import { lengthUnit } from "../units.ts";

const UNITS: Readonly<Record<DrawingUnit, string>> = {
  m: "meters",
  ft: "international feet",
  "us-ft": "US survey feet",
};

/** On which grid a drawing is and in which unit, and what its layers hold. */
export function drawingNotes({ verticalDatum, system }: Exported, grid: DrawingGrid): string[] {
  const unit = UNITS[grid.unit];
  const why = grid.isChosen ? ", because the elevation data is in degrees" : "";
  return [
    `Grid: ${grid.name}${why}. Coordinates and elevations are in ${unit}; vertical datum: ${verticalDatum}. Texts are in ${lengthUnit(system)}.`,
    "Only TOP-OF-LEVEE, STAKES-TOP-OF-LEVEE, STAKES-GROUND and STAKE-LABELS have elevations. Layers ending in -2D lie at 0, which is no elevation. A stake without a point on STAKES-GROUND has no elevation data.",
  ];
}
