import { Refusal } from "../../shared/failure.ts";
import { FORMATS } from "./formats.ts";
import type { OpenRaster } from "./open-raster.ts";
import { readBytes } from "./read-bytes.ts";
import type { RasterWithSides } from "./sort-files.ts";

const HEAD_BYTES = 4096;

/** First bytes of files that are often taken for rasters, and what to do with them. */
const OTHERS: readonly (readonly [string, string, string])[] = [
  ["<VRTDataset", "a GDAL VRT under another name", "Give it a name that ends in .vrt."],
  ["PK\x03\x04", "a ZIP archive", "Unpack it and open the raster inside."],
  [
    "PK\x05\x06",
    "an empty ZIP archive",
    "Download it again, unpack it and open the raster inside.",
  ],
  ["\x1f\x8b", "a gzip archive", "Unpack it and open the raster inside."],
  ["7z\xbc\xaf", "a 7-Zip archive", "Unpack it and open the raster inside."],
  [
    "LASF",
    "a point cloud (LAS or LAZ)",
    "Make a ground raster (DTM) from it in a GIS and open that.",
  ],
  ["\x89PNG", "a PNG picture", "Open the elevation raster itself, not a picture of it."],
  ["\xff\xd8\xff", "a JPEG picture", "Open the elevation raster itself, not a picture of it."],
  ["%PDF", "a PDF document", "Open the elevation raster itself, not a map of it."],
  ["\x89HDF", "an HDF5 file", "Convert it to GeoTIFF and open that."],
  ["CDF", "a netCDF file", "Convert it to GeoTIFF and open that."],
  ["EHFA_HEADER_TAG", "an Erdas Imagine file", "Convert it to GeoTIFF and open that."],
  ["SQLite format 3", "a database (GeoPackage or MBTiles)", "Export the raster in it as GeoTIFF."],
  [
    "\0\0\x27\x0a",
    "a shapefile",
    "Open an elevation raster; lines and footprints are imported elsewhere.",
  ],
];

/**
 * Opens a file with the format that recognises its first bytes.
 * @throws Refusal when none does, or when the one that does refuses
 */
export async function openFile({ file, sides }: RasterWithSides): Promise<OpenRaster> {
  const head = new Uint8Array(await readBytes(file, 0, HEAD_BYTES));
  if (head.length === 0) {
    throw new Refusal(
      "raster/empty",
      `Expected an elevation raster; "${file.name}" is empty.`,
      "Download or copy the raster again and compare its size with the original.",
    );
  }
  const format = FORMATS.find((each) => each.recognises(head));
  if (format) return format.open(file, sides);
  const text = String.fromCharCode(...head.subarray(0, 16));
  const other = OTHERS.find(([mark]) => text.startsWith(mark));
  const what = other ? other[1] : "neither";
  throw new Refusal(
    "raster/unknown-format",
    `Expected a GeoTIFF or an Esri ASCII grid; "${file.name}" is ${what}.`,
    other?.[2] ?? "Convert the elevation raster to GeoTIFF and open that.",
  );
}
