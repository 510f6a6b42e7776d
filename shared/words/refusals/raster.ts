import type { Failure } from "../../failure.ts";
import type { VerticalUnit } from "../../plan.ts";
import { HEIGHT_UNIT_WORDS } from "../ground-line.ts";
import { GRID_FAULTS, OTHER_FILES, TIFF_FAULTS, UNREAD_TIFFS } from "./file-faults.ts";
import type { RefusalTexts } from "./text.ts";

/** The name of the file. */
export interface Named {
  readonly name: string;
}

/** A fault of a table above, with the figures of its text. */
export interface Fault<T> extends Named {
  readonly fault: keyof T;
  readonly of?: readonly (string | number)[];
}

/** What two files of one ground differ in; null where a file names no datum. */
type Difference = Named & { readonly first: string } & (
    | { readonly in: "grid" }
    | { readonly in: "reference"; readonly has: string; readonly firstHas: string }
    | { readonly in: "unit"; readonly has: VerticalUnit; readonly firstHas: VerticalUnit }
    | { readonly in: "datum"; readonly has: string | null; readonly firstHas: string | null }
  );

const COPY_AGAIN = "Download or copy the raster again and compare its size with the original.";
const REPROJECT =
  "Find the raster's datum in the survey's metadata, reproject the raster to a WGS 84 UTM zone with a GIS (for instance gdalwarp -t_srs EPSG:32615; 326 and the zone in the north, 327 and the zone in the south), and open that.";

/** Of opening elevation data. */
export const RASTER_REFUSALS = {
  "raster/none": () => [
    "Expected an elevation raster; none is among the files.",
    "Choose a GeoTIFF or an Esri ASCII grid, with its side-car files if it has any.",
  ],
  "raster/empty": ({ name }: Named) => [
    `Expected an elevation raster; "${name}" is empty.`,
    COPY_AGAIN,
  ],
  "raster/unknown-format": ({ name, is }: Named & { is: keyof typeof OTHER_FILES }) => [
    `Expected a GeoTIFF or an Esri ASCII grid; "${name}" is ${OTHER_FILES[is][0]}.`,
    OTHER_FILES[is][1],
  ],
  "raster/several": (
    { first, of, others }: { first: Failure; of: number; others: readonly string[] },
    _units,
    say,
  ) => {
    const [message, remedy] = say(first);
    return [
      `${message} Of the ${of} files, ${others.length} more cannot be read as elevation data: ${firstFew(others)}.`,
      `${remedy} Open elevation data without other files.`,
    ];
  },
  "raster/alone": ({ why, name, host }: Named & { why: Failure; host: string }, _units, say) => [
    `${say(why)[0]} At ${host} only the file itself is read, not the files beside it (.tfw, .prj, .aux.xml).`,
    `Download "${name}" with the files beside it and open them together.`,
  ],
  "raster/same-name": ({ name }: Named) => [
    `Expected files with different names; two are named "${name}".`,
    "Open the files of one folder at a time, or give them names of their own.",
  ],
  "raster/unreadable": ({ name, changed }: Named & { changed: boolean }) =>
    changed
      ? [`"${name}" has changed since it was opened.`, "Open the file again."]
      : [
          `"${name}" cannot be read: it has been moved, changed or locked since it was chosen.`,
          "Choose the file again.",
        ],
  "raster/truncated": ({ name }: Named) => [
    `"${name}" ends before the data it promises: it is cut short or damaged.`,
    COPY_AGAIN,
  ],
  "raster/damaged": ({ name, fault, of = [] }: Fault<typeof TIFF_FAULTS>) => [
    `"${name}" is a TIFF, but it is damaged: ${TIFF_FAULTS[fault](of)}.`,
    "Download or copy the raster again, or write it again from its source.",
  ],
  "raster/unsupported": ({ name, fault, of = [] }: Fault<typeof UNREAD_TIFFS>) => [
    `"${name}" is a TIFF of a kind that is not read: ${UNREAD_TIFFS[fault](of)}.`,
    fault === "picture"
      ? "Open the elevation raster (a digital elevation model), not an air photo or a rendered map."
      : fault === "numbers"
        ? "Write it again with 32-bit floating point numbers (Float32)."
        : fault === "large-pieces"
          ? "Write it again with tiles, for instance as a Cloud Optimized GeoTIFF."
          : "Write it as a GeoTIFF with one band of numbers, compressed with Deflate, LZW or not at all.",
  ],
  "raster/no-data-unreadable": ({ name, mark }: Named & { mark: string }) => [
    `"${name}" marks its holes with "${mark}", which is not a number.`,
    "Set the raster's no-data value to a number, for instance -9999, and open it again.",
  ],
  "raster/no-place": ({ name }: Named) => [
    `"${name}" is a TIFF that does not say where on Earth it lies.`,
    "Open a GeoTIFF, or choose its world file (.tfw) and its .prj together with it.",
  ],
  "raster/control-points": ({ name, points }: Named & { points: number }) => [
    `"${name}" is placed by ${points} ground control points, not by a regular grid.`,
    "Rectify it first (warp it to a regular grid in a known reference), and open that.",
  ],
  "raster/no-grid": ({ name }: Named) => [
    `"${name}" has a placement that is not a grid: its origin or cell size is zero, infinite or not a number.`,
    "Write the raster again with a valid origin and cell size.",
  ],
  "raster/off-earth": ({ name, reference }: Named & { reference: string }) => [
    `"${name}" does not lie on Earth with the place and reference it states (${reference}).`,
    "Check its coordinate reference and origin in a GIS, and write it again.",
  ],
  "raster/cell-size": ({ name, xM, yM }: Named & { xM: number; yM: number }, units) => [
    `Expected the cells of elevation data; those of "${name}" measure ${units.far(xM)} by ${units.far(yM)} on the ground.`,
    "Check its cell size and coordinate reference in a GIS, and write it again.",
  ],
  "raster/height-scale": ({ name, scale, offset }: Named & { scale: number; offset: number }) => [
    `"${name}" maps its numbers to heights with a scale of ${scale} and an offset of ${offset}.`,
    "Write the raster again with heights stored as they are.",
  ],
  "raster/world-file": ({ name }: Named) => [
    `Expected six numbers that place a grid in "${name}"; it holds something else.`,
    "Choose the world file that belongs to the raster, or open a GeoTIFF that carries its own placement.",
  ],
  "raster/crs-missing": ({ name, isGrid }: Named & { isGrid: boolean }) =>
    isGrid
      ? [
          `"${name}" does not state its coordinate reference: an Esri ASCII grid keeps it in a .prj file.`,
          "Choose the .prj file together with the grid.",
        ]
      : [
          `"${name}" does not state its coordinate reference.`,
          "Choose its .prj file together with it, or write the raster again with its reference.",
        ],
  "raster/crs-unknown": ({ name, reference }: Named & { reference: string | null }) => [
    reference === null
      ? `Expected a coordinate reference in well-known text (PROJCS[...] or GEOGCS[...]); "${name}" has none.`
      : `Expected a coordinate reference that is known here; "${name}" has ${reference}.`,
    REPROJECT,
  ],
  "raster/datum-unknown": ({ name, reference }: Named & { reference: string }, { system }) => [
    `Expected a raster whose datum lies in a known way on WGS 84; "${name}" (${reference}) names none that is known here, and its place could be off by hundreds of ${system === "us" ? "feet" : "meters"}.`,
    REPROJECT,
  ],
  "raster/grid-header": ({ name, fault, of = [] }: Fault<typeof GRID_FAULTS>) => [
    `Expected the head of an Esri ASCII grid (ncols, nrows, xllcorner, yllcorner, cellsize) in "${name}"; ${GRID_FAULTS[fault](of)}.`,
    "Export the grid again, or convert it to GeoTIFF.",
  ],
  "raster/comma-decimals": ({ name, text }: Named & { text: string }) => [
    `Expected numbers with a decimal point in "${name}"; it has "${text}".`,
    "Export the grid again with decimal points, or replace the commas in a text editor.",
  ],
  "raster/cell-count": ({
    name,
    columns,
    rows,
    found,
  }: Named & { columns: number; rows: number; found: number | null }) => {
    const more = found !== null && found > columns * rows;
    const came = found === null ? "is too short to hold them" : `has ${more ? "more" : found}`;
    return [
      `Expected ${columns} x ${rows} cells in "${name}"; it ${came}.`,
      "Download or copy the grid again, or export it again.",
    ];
  },
  "raster/not-a-number": ({ name, row, text }: Named & { row: number; text: string }) => [
    `Expected a number in row ${row} of "${name}"; it has "${text}".`,
    "Export the grid again, or correct the row in a text editor.",
  ],
  "ground/files-differ": (difference: Difference) => [
    `Several files must have one coordinate reference, one vertical datum and one unit. "${difference.name}" ${differenceWords(difference)}.`,
    `Open only files that fit together, or bring them to the reference, datum and unit of "${difference.first}" in a GIS first.`,
  ],
  "ground/unit-unsupported": ({ name, unit }: Named & { unit: string | number }) => [
    `Expected heights in meters, feet or US survey feet; "${name}" states ${typeof unit === "number" ? `the unit with the code ${unit}` : `"${unit}"`}.`,
    "Convert the heights to meters in a GIS and open the converted raster.",
  ],
  "ground/unit-unknown": ({ name }: Named) => [
    `"${name}" does not say whether its heights are in meters, feet or US survey feet.`,
    "Look in the survey's metadata and choose meters, feet or US survey feet in Elevation data. A wrong unit makes every height wrong by a factor of three.",
  ],
  "ground/no-data": ({ name }: Named) => [
    `"${name}" holds no height: every cell of it is marked as missing.`,
    "Check the raster in a GIS; open the one that holds the ground.",
  ],
  "ground/window-too-large": ({ columns, rows }: { columns: number; rows: number }) => [
    `The lines reach over ${columns} x ${rows} cells of elevation data, more than can be read at full resolution.`,
    "Draw a smaller ring or line, or open a coarser raster for a line this long.",
  ],
  "ground/picture-too-large": ({
    columns,
    rows,
    most,
  }: {
    columns: number;
    rows: number;
    most: number;
  }) => [
    `A picture of ${columns} x ${rows} pixels was requested; at most ${most} are made at once.`,
    "Ask for a smaller picture.",
  ],
} satisfies RefusalTexts;

function differenceWords(difference: Difference): string {
  const { first } = difference;
  switch (difference.in) {
    case "grid":
      return "has a grid that is turned or mirrored against it";
    case "reference":
      return `is in ${difference.has}, and "${first}" in ${difference.firstHas}`;
    case "unit":
      return `has heights in ${HEIGHT_UNIT_WORDS[difference.has]}, and "${first}" in ${HEIGHT_UNIT_WORDS[difference.firstHas]}`;
    case "datum": {
      const [has, firstHas] = [difference.has, difference.firstHas].map(
        (datum) => datum ?? "an unnamed datum",
      );
      return `has heights above ${has}, and "${first}" above ${firstHas}`;
    }
  }
}

const MOST_NAMED = 5;

/** `"a.tif", "b.tif" and 9 more` */
export function firstFew(names: readonly string[]): string {
  const named = names.slice(0, MOST_NAMED).map((name) => `"${name.slice(0, 80)}"`);
  const more = names.length - named.length;
  return more > 0 ? `${named.join(", ")} and ${more} more` : named.join(", ");
}
