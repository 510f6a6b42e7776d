import type { Apart } from "../../apart.ts";
import type { LoneValue } from "../../ground-marks.ts";
import type { LeftBehind } from "../../ground-settings.ts";
import { compassWords } from "../compass.ts";
import { cellWords, rasterValue } from "../marks.ts";
import type { RefusalTexts } from "./text.ts";

/** Why there is no ground to work on, and what is said of the one that is open. */
export const GROUND_REFUSALS = {
  "ground/none": () => [
    "This needs elevation data, and none is open.",
    "Open a GeoTIFF or an Esri ASCII grid of the site.",
  ],
  "ground/mark-unknown": ({ mark }: { mark: LoneValue }, units) => [
    `"${mark.file.name}": ${cellWords(mark)} exactly ${rasterValue(mark.value, mark.unit)}, ${units.length(mark.gapM)} ${mark.side} all other heights.`,
    "Say whether it marks missing data or is ground. Nothing is counted before that.",
  ],
  "ground/other-data": (
    {
      left: { rmseM, correctionM, datumNote, sameDatumNote, offsetM },
      canUndo,
    }: { left: LeftBehind; canUndo: boolean },
    units,
  ) => {
    const length = (m: number) => units.length(m, 2);
    const said = [
      ...(rmseM === null ? [] : [`accuracy ${length(rmseM)}`]),
      ...(correctionM === 0 ? [] : [`correction of ${length(correctionM)}`]),
      ...(datumNote === "" ? [] : [`vertical datum "${datumNote}"`]),
      ...(sameDatumNote === "" ? [] : [`datum note of the water "${sameDatumNote}"`]),
    ];
    const sentences = [
      "This is other elevation data than the plan was made on.",
      ...(said.length > 0 ? [`No longer used: ${said.join(", ")}.`] : []),
      ...(offsetM === null
        ? []
        : [`The datum offset of ${length(offsetM)} in Water is kept: check it.`]),
    ];
    const enter = "Enter what the report of this data says, in Elevation data and Water.";
    return [sentences.join(" "), canUndo ? `${enter} Undo brings them back.` : enter];
  },
  "plan/elsewhere": ({ apart }: { apart: Apart | null }, units) => [
    apart
      ? `The elevation data lies ${units.far(apart.distanceM)} ${compassWords(apart.bearingDeg)} of the plan.`
      : "The elevation data lies away from the plan.",
    "Open the elevation data of the plan's place, or start a new plan here.",
  ],
  "plan/example-left": ({ ground }: { ground: string }) => [
    `This is a new plan on ${ground}.`,
    "Nothing of the example is in it. Undo brings the example back with your changes.",
  ],
  "plan/other-terrain": ({ names }: { names: readonly string[] }) => [
    `This plan was drawn on ${names.join(", ")}, which is not the elevation data now open.`,
    "Open that elevation data, or check accuracy and datum in Elevation data: they were entered for it.",
  ],
  "place/unreadable": ({ came }: { came: string }) => [
    `Expected two figures, longitude and latitude or x and y of the grid; came "${came}".`,
    "Type them like -93.1874, 44.0521.",
  ],
  "place/elsewhere": ({ came }: { came: string }) => [
    `${came} does not lie on the elevation data that is open.`,
    "Check the order, longitude first, and the minus sign of a western longitude.",
  ],
  "file/directory": ({ folder, most }: { folder: string; most: number | null }) => [
    `Expected elevation data in the folder ${folder}; found ${most === null ? "none in it" : `more than ${most} of its files`} with a name such as dem.tif, dem.asc or tiles.vrt.`,
    "Choose the folder that holds the rasters, or the files themselves.",
  ],
  "address/unreadable": ({ came }: { came: string }) => [
    `Expected the web address of a raster, such as https://host.example/dem.tif, without a name and password in it; came "${came}".`,
    "Copy the address of the file itself from whoever offers it.",
  ],
  "address/hosts": ({ hosts }: { hosts: readonly string[] }) => [
    `Expected elevation data from one host; the plan names ${hosts.join(", ")}.`,
    "Open one address after the other, or download the files.",
  ],
  "address/ask": ({ names, hosts }: { names: string; hosts: readonly string[] }) => [
    `This plan was drawn on ${names} at ${hosts.join(", ")}.`,
    "Nothing is read from there until you open it.",
  ],
} satisfies RefusalTexts;
