import type { Failure } from "../../../shared/failure.ts";
import type { ADDRESS_REFUSALS } from "../../../shared/words/refusals/address.ts";
import {
  GRID_FAULTS,
  OTHER_FILES,
  TIFF_FAULTS,
  UNREAD_TIFFS,
  VRT_FAULTS,
  VRT_SOURCES,
} from "../../../shared/words/refusals/file-faults.ts";
import type { RASTER_REFUSALS } from "../../../shared/words/refusals/raster.ts";
import type { VRT_REFUSALS } from "../../../shared/words/refusals/vrt.ts";
import type { SamplesOf } from "./samples.ts";

const FILE = { name: "dem.tif" };
const HOST = { host: "data.example" };
const SEVEN = Array.from({ length: 7 }, (_, k) => `note-${k}.txt`);
const EMPTY: Failure = { code: "raster/empty", given: FILE };

type OneOrMore<T> = readonly [T, ...T[]];

/** A sample for each fault of a table. */
function faults<T extends object>(
  table: T,
): OneOrMore<{ name: string; fault: keyof T; of: [7, 3] }> {
  return Object.keys(table).map((fault) => ({
    ...{ ...FILE, fault: fault as keyof T, of: [7, 3] as [7, 3] },
  })) as never;
}

export const RASTER_SAMPLES: SamplesOf<typeof RASTER_REFUSALS> = {
  "raster/none": "no figures",
  "raster/empty": [FILE],
  "raster/unknown-format": Object.keys(OTHER_FILES).map((is) => ({
    ...{ ...FILE, is: is as keyof typeof OTHER_FILES },
  })) as never,
  "raster/several": [
    { first: EMPTY, of: 3, others: ["a.txt"] },
    { first: EMPTY, of: 8, others: SEVEN },
  ],
  "raster/alone": [{ ...FILE, ...HOST, why: { code: "raster/no-place", given: FILE } }],
  "raster/same-name": [FILE],
  "raster/unreadable": [true, false].map((changed) => ({ ...FILE, changed })) as never,
  "raster/truncated": [FILE],
  "raster/damaged": faults(TIFF_FAULTS),
  "raster/unsupported": faults(UNREAD_TIFFS),
  "raster/no-data-unreadable": [{ ...FILE, mark: "none" }],
  "raster/no-place": [FILE],
  "raster/control-points": [{ ...FILE, points: 4 }],
  "raster/no-grid": [FILE],
  "raster/off-earth": [{ ...FILE, reference: "EPSG:26915" }],
  "raster/cell-size": [{ ...FILE, xM: 30_000, yM: 0.2 }],
  "raster/height-scale": [{ ...FILE, scale: 0, offset: 7 }],
  "raster/world-file": [FILE],
  "raster/crs-missing": [true, false].map((isGrid) => ({ ...FILE, isGrid })) as never,
  "raster/crs-unknown": [null, "EPSG:7"].map((reference) => ({ ...FILE, reference })) as never,
  "raster/datum-unknown": [{ ...FILE, reference: "EPSG:7" }],
  "raster/grid-header": faults(GRID_FAULTS),
  "raster/comma-decimals": [{ ...FILE, text: "1,5" }],
  "raster/cell-count": [null, 7, 13].map((found) => ({
    ...{ ...FILE, columns: 4, rows: 3, found },
  })) as never,
  "raster/not-a-number": [{ ...FILE, row: 7, text: "x" }],
  "ground/files-differ": [
    { ...FILE, first: "a.tif", in: "grid" },
    { ...FILE, first: "a.tif", in: "reference", has: "EPSG:26915", firstHas: "EPSG:26916" },
    { ...FILE, first: "a.tif", in: "unit", has: "metre", firstHas: "us-survey-foot" },
    { ...FILE, first: "a.tif", in: "datum", has: null, firstHas: "NAVD 88" },
  ],
  "ground/unit-unsupported": [
    { ...FILE, unit: 9007 },
    { ...FILE, unit: "fathom" },
  ],
  "ground/unit-unknown": [FILE],
  "ground/no-data": [FILE],
  "ground/window-too-large": [{ columns: 9000, rows: 9000 }],
  "ground/picture-too-large": [{ columns: 9000, rows: 9000, most: 16_777_216 }],
};

export const VRT_SAMPLES: SamplesOf<typeof VRT_REFUSALS> = {
  "raster/vrt-kind": [{ ...FILE, has: "VRTWarpedDataset" }],
  "raster/vrt-damaged": faults(VRT_FAULTS),
  "raster/vrt-too-large": [{ ...FILE, bytes: 4e7, mostBytes: 3.2e7 }],
  "raster/vrt-source": faults(VRT_SOURCES),
  "raster/vrt-missing": [
    { ...FILE, files: 9, missing: SEVEN, atAddress: true },
    { ...FILE, files: 2, missing: ["a.tif"], atAddress: false },
    { ...FILE, files: 1, missing: ["a.tif"], atAddress: false },
  ],
  "raster/vrt-place": [{ ...FILE, vrt: "tiles.vrt", cells: 3.001 }],
  "raster/vrt-reference": [{ ...FILE, vrt: "tiles.vrt", has: "EPSG:26915", vrtHas: "EPSG:26916" }],
  "raster/vrt-unit": [{ ...FILE, vrt: "tiles.vrt" }],
};

export const ADDRESS_SAMPLES: SamplesOf<typeof ADDRESS_REFUSALS> = {
  "address/no-ranges": [HOST],
  "address/elsewhere": [{ ...HOST, to: "https://other.example/dem.tif" }],
  "address/answer": [
    { ...HOST, status: 403 },
    { ...HOST, status: 500 },
  ],
  "address/slow": [HOST],
  "address/certificate": [{ ...HOST, cause: "CERT_HAS_EXPIRED" }],
  "address/unreachable": [true, false].map((isPage) => ({ ...HOST, isPage })) as never,
  "address/lies": [
    { ...HOST, sends: "nothing" },
    { ...HOST, sends: "another-part" },
    { ...HOST, sends: "bytes", bytes: 7, wanted: 9 },
  ],
  "address/cut-off": [HOST],
  "address/changed": [HOST],
  "address/no-length": [true, false].map((isPage) => ({ ...HOST, isPage })) as never,
};
