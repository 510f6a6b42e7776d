import type { IMPORT_READING_REFUSALS } from "../../../shared/words/refusals/import-reading.ts";
import type { IMPORT_REFUSALS } from "../../../shared/words/refusals/imports.ts";
import type { SamplesOf } from "./samples.ts";

export const IMPORT_SAMPLES: SamplesOf<typeof IMPORT_REFUSALS & typeof IMPORT_READING_REFUSALS> = {
  "shapes/zip-damaged": "no figures",
  "shapes/zip-too-large": [{ mostBytes: 1e8 }, { mostFiles: 2000 }],
  "shapes/flatgeobuf-damaged": "no figures",
  "shapes/parquet-damaged": "no figures",
  "shapes/parquet-packing": [{ came: "BROTLI" }],
  "shapes/parquet-too-large": [{ mostBytes: 3e8 }],
  "shapes/not-geoparquet": "no figures",
  "shapes/no-reference": [
    { format: "flatgeobuf" },
    { format: "geoparquet" },
    { format: "shapefile", name: "barn.shp" },
  ],
  "shapes/shapefile-damaged": [{ name: "barn.shp" }],
  "shapes/several": [{ count: 2, names: ["a.shp", "b.shp"] }],
  "shapes/entities": "no figures",
  "shapes/not-xml": "no figures",
  "shapes/other-format": [{ began: "svg" }],
  "shapes/none": [
    { in: "zip" },
    { in: "kml-gpx" },
    { in: "file", others: 0 },
    { in: "file", others: 1 },
    { in: "file", others: 3 },
  ],
  "footprints/none": [
    { lines: 1, others: 1 },
    { lines: 2, others: 3 },
  ],
  "footprints/removed": [
    { name: "county.geojson", count: 1 },
    { name: "county.geojson", count: 2300 },
  ],
  "footprints/elsewhere": [{ count: 12 }],
  "shapes/axis-order": "no figures",
  "footprints/other-grid": [
    { named: null, ground: null },
    { named: "EPSG:26915", ground: "EPSG:26916" },
  ],
  "shapes/no-ground": "no figures",
  "shapes/no-paths": "no figures",
  "shapes/no-outlines": "no figures",
  "shapes/no-lines": "no figures",
  "shapes/holes-left-out": [{ outlines: 1 }, { outlines: 2 }],
  "shapes/corners-left-out": [
    { shapes: 1, most: 2000 },
    { shapes: 2, most: 2000 },
  ],
  "shapes/bad-left-out": [{ shapes: 1 }, { shapes: 2 }],
  "shapes/off-data-left-out": [{ shapes: 1 }, { shapes: 2 }],
  "shapes/others-left-out": [{ shapes: 1 }, { shapes: 2 }],
  "shapes/pipe-figures-left-out": [{ figures: 1 }, { figures: 2 }],
};
