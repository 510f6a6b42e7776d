import { formatCount } from "../../units.ts";
import { plural } from "../plural.ts";
import type { RefusalTexts } from "./text.ts";

/** Why the shapes of a file that was read are not taken, and what of them is left out. */
export const IMPORT_REFUSALS = {
  "footprints/none": ({ lines, others }: { lines: number; others: number }) => [
    `Expected building outlines as polygons; the file has ${plural(lines, "line")} and ${plural(others, "other shape")}.`,
    "Export the outlines as polygons.",
  ],
  "footprints/elsewhere": ({ count }: { count: number }) => [
    `Expected shapes on the elevation data that is open; none of the file's ${count} lies on it.`,
    "Check that the file is of this place, in longitude and latitude or in the grid of the elevation data.",
  ],
  "shapes/axis-order": () => [
    "Expected longitude before latitude; the places of this file lie on the elevation data only the other way round.",
    "Export it again as GeoJSON (RFC 7946) with longitude first, or as a zipped shapefile or KML.",
  ],
  "footprints/removed": ({ name, count }: { name: string; count: number }) => [
    `${count === 1 ? `The footprint of ${name} is` : `The ${formatCount(count)} footprints of ${name} are`} removed from this page and this device.`,
    "Buildings taken into the plan stay.",
  ],
  "footprints/other-grid": ({ named, ground }: { named: string | null; ground: string | null }) => {
    const came = named === null ? "in a grid of their own" : `in ${named}`;
    const expected = ground === null ? "" : ` or in the grid of the elevation data, ${ground}`;
    return [
      `Expected shapes in longitude and latitude${expected}; these are ${came}, and none lies on the elevation data.`,
      "Export them again as GeoJSON in EPSG:4326 or as a zipped shapefile with its .prj, or open the elevation data of their place first.",
    ];
  },
  "shapes/no-ground": () => [
    "Expected elevation data to put the shapes on; none is open.",
    "Open the elevation data of the place first, then this file again.",
  ],
  "shapes/no-paths": () => [
    "Expected lines; the file has only outlines on this elevation data.",
    "Export culverts and roads as lines.",
  ],
  "shapes/no-outlines": () => [
    "Expected outlines; the file has only lines on this elevation data.",
    "Export the areas as polygons.",
  ],
  "shapes/no-lines": () => [
    "Expected lines or outlines of levees; the file has none on this elevation data.",
    "Export the line as a line, or a ring as a polygon.",
  ],
  "shapes/off-data-left-out": ({ shapes }: { shapes: number }) => [
    `${shapes === 1 ? "1 shape outside the elevation data is" : `${shapes} shapes outside the elevation data are`} left out.`,
    "",
  ],
  "shapes/others-left-out": ({ shapes }: { shapes: number }) => [
    `${shapes === 1 ? "1 shape that is not an outline is" : `${shapes} shapes that are not outlines are`} left out.`,
    "",
  ],
  "shapes/pipe-figures-left-out": ({ figures }: { figures: number }) => [
    `${figures === 1 ? "1 figure is" : `${figures} figures are`} no invert or diameter of a culvert and left out. Type them under Water.`,
    "",
  ],
} satisfies RefusalTexts;
