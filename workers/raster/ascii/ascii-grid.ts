import { loadPart } from "../../../shared/load-part.ts";
import type { RasterFormat } from "../open-raster.ts";

export const ASCII_GRID = "Esri ASCII grid";

export const HEADER_KEYS = [
  "ncols",
  "nrows",
  "xllcorner",
  "yllcorner",
  "xllcenter",
  "yllcenter",
  "cellsize",
  "dx",
  "dy",
  "nodata_value",
] as const;

/** How an Esri ASCII grid is known; what reads it is fetched for the first one. */
export const asciiGrid: RasterFormat = {
  name: ASCII_GRID,
  recognises(head) {
    const text = String.fromCharCode(...head.subarray(0, 64));
    const word = /^\s*([A-Za-z_]+)\s/.exec(text)?.[1]?.toLowerCase();
    return HEADER_KEYS.some((key) => key === word);
  },
  open: async (file, sides) => {
    const reader = await loadPart("the reader of ASCII grids", () => import("./open-ascii.ts"));
    return reader.openAsciiGrid(file, sides);
  },
};
