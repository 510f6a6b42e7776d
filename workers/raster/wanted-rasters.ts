import { loadPart } from "../../shared/load-part.ts";
import { openFile } from "./open-file.ts";
import type { OpenRaster } from "./open-raster.ts";
import type { RasterWithSides } from "./sort-files.ts";
import type { WantedRaster } from "./vrt/vrt-files.ts";

const VRT_NAME = /\.vrt$/i;

export function isVrt(name: string): boolean {
  return VRT_NAME.test(name);
}

/**
 * The rasters to open: those that the VRTs among them name, and where there is no VRT all.
 * @returns the rasters, in the order in which they count where they overlap, and the names of those that no VRT names
 * @throws Refusal of a VRT that cannot be read or whose files are missing
 */
export async function wantedRasters(
  found: readonly RasterWithSides[],
): Promise<{ readonly wanted: readonly WantedRaster[]; readonly unnamed: readonly string[] }> {
  if (!found.some(({ file }) => isVrt(file.name))) {
    return { wanted: found.map((each) => ({ ...each, use: null })), unnamed: [] };
  }
  const part = await loadPart("the reader of VRT files", () => import("./vrt/vrt-files.ts"));
  return part.namedByVrts(found);
}

/** A raster as it is, or as a VRT uses it. @throws Refusal when it cannot be read, or is not what the VRT says */
export async function openWanted(wanted: WantedRaster): Promise<OpenRaster> {
  const raster = await openFile(wanted);
  if (!wanted.use) return raster;
  const part = await loadPart("the reader of VRT files", () => import("./vrt/placed-by-vrt.ts"));
  return part.placedByVrt(raster, wanted.use);
}
