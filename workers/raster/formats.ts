import { asciiGrid } from "./ascii/ascii-grid.ts";
import { geotiff } from "./geotiff/open-geotiff.ts";
import type { RasterFormat } from "./open-raster.ts";

/** The formats Drystead reads. A new one is a module like these and a line here. */
export const FORMATS: readonly RasterFormat[] = [geotiff, asciiGrid];
