import { type Given, refusal } from "../../shared/failure.ts";
import { FORMATS } from "./formats.ts";
import type { OpenRaster } from "./open-raster.ts";
import { readBytes } from "./read-bytes.ts";
import type { RasterWithSides } from "./sort-files.ts";

const HEAD_BYTES = 4096;

/** First bytes of files that are often taken for rasters. */
const OTHERS: readonly (readonly [string, Given<"raster/unknown-format">["is"]])[] = [
  ["<VRTDataset", "vrt"],
  ["PK\x03\x04", "zip"],
  ["PK\x05\x06", "empty-zip"],
  ["\x1f\x8b", "gzip"],
  ["7z\xbc\xaf", "7z"],
  ["LASF", "las"],
  ["\x89PNG", "png"],
  ["\xff\xd8\xff", "jpeg"],
  ["%PDF", "pdf"],
  ["\x89HDF", "hdf"],
  ["CDF", "netcdf"],
  ["EHFA_HEADER_TAG", "imagine"],
  ["SQLite format 3", "sqlite"],
  ["\0\0\x27\x0a", "shapefile"],
];

/**
 * Opens a file with the format that recognises its first bytes.
 * @throws Refusal when none does, or when the one that does refuses
 */
export async function openFile({ file, sides }: RasterWithSides): Promise<OpenRaster> {
  const head = new Uint8Array(await readBytes(file, 0, HEAD_BYTES));
  if (head.length === 0) {
    throw refusal("raster/empty", { name: file.name });
  }
  const format = FORMATS.find((each) => each.recognises(head));
  if (format) return format.open(file, sides);
  const text = String.fromCharCode(...head.subarray(0, 16));
  const other = OTHERS.find(([mark]) => text.startsWith(mark));
  throw refusal("raster/unknown-format", { name: file.name, is: other?.[1] ?? "neither" });
}
