import { plural } from "../plural.ts";
import type { RefusalTexts } from "./text.ts";

const ASSIGN_REFERENCE =
  "Assign the coordinate system in a GIS and export it again, or export it as GeoJSON in EPSG:4326.";

/** Why the shapes of a file cannot be read, and what is left out: the reader brings these texts. */
export const IMPORT_READING_REFUSALS = {
  "shapes/zip-damaged": () => [
    "Expected a whole zip file; this one is cut off or damaged.",
    "Get it again from its source, or zip the files again.",
  ],
  "shapes/zip-too-large": (given: { mostBytes: number } | { mostFiles: number }) =>
    "mostBytes" in given
      ? [
          `Expected at most ${given.mostBytes / 1e6} MB of shapes in a zip file; this one has more.`,
          "Cut the shapes down to the site in a GIS, then zip them again.",
        ]
      : [
          `Expected at most ${given.mostFiles} files in a zip file; this one has more.`,
          "Zip only the shapefile: .shp, .dbf, .prj and .cpg.",
        ],
  "shapes/flatgeobuf-damaged": () => [
    "Expected a whole FlatGeobuf file; it is cut off, damaged or of a version before 3.",
    "Get it again from its source, or export it again from a GIS.",
  ],
  "shapes/parquet-damaged": () => [
    "Expected a whole GeoParquet file; it is cut off or damaged.",
    "Get it again from its source, or export it again from a GIS.",
  ],
  "shapes/parquet-packing": ({ came }: { came: string }) => [
    `Expected a GeoParquet file packed by Snappy, Gzip, Zstandard or not at all; this one is packed by ${came}.`,
    "Export it again with one of these.",
  ],
  "shapes/parquet-too-large": ({ mostBytes }: { mostBytes: number }) => [
    `Expected at most ${mostBytes / 1e6} MB of shapes in a GeoParquet file; this one has more.`,
    "Cut the shapes down to the site in a GIS.",
  ],
  "shapes/not-geoparquet": () => [
    "Expected GeoParquet, with its geometry as well-known binary; the file does not say so of any column.",
    "Export it from a GIS as GeoParquet with WKB geometry, or as GeoJSON.",
  ],
  "shapes/no-reference": (
    given: { format: "flatgeobuf" | "geoparquet" } | { format: "shapefile"; name: string },
  ) => {
    switch (given.format) {
      case "flatgeobuf":
        return [
          "Expected a FlatGeobuf file that names its coordinate system; this one names none, or one that is not known here.",
          ASSIGN_REFERENCE,
        ];
      case "geoparquet":
        return [
          "Expected a GeoParquet file that gives its coordinate system by a code; it says that it is not known, or has no code.",
          ASSIGN_REFERENCE,
        ];
      case "shapefile":
        return [
          `Expected a .prj beside "${given.name}" that names its coordinate system; the zip file has none.`,
          "Zip it again with its .prj, or export it as GeoJSON in EPSG:4326.",
        ];
    }
  },
  "shapes/shapefile-damaged": ({ name }: { name: string }) => [
    `Expected a whole shapefile; "${name}" or its table is cut off or damaged.`,
    "Export it again from a GIS, and zip .shp, .dbf and .prj together.",
  ],
  "shapes/several": ({ count, names }: { count: number; names: readonly string[] }) => [
    `Expected one shapefile in the zip file; it has ${count}: ${names.map((name) => `"${name}"`).join(", ")}.`,
    "Zip the one with the shapes you want, with its .dbf and .prj.",
  ],
  "shapes/entities": () => [
    "Expected plain KML or GPX; the file defines entities of its own, which are not read.",
    "Save it again from a GIS as KML, GPX or GeoJSON.",
  ],
  "shapes/not-xml": () => [
    "Expected KML or GPX, which are XML; the file is not well-formed XML.",
    "Check that it is whole.",
  ],
  "shapes/other-format": ({ began }: { began: string }) => [
    `Expected KML or GPX; the file begins with <${began}>.`,
    "Save it from a GIS as GeoJSON, KML, GPX or a zipped shapefile.",
  ],
  "shapes/none": (given: { in: "zip" | "kml-gpx" } | { in: "file"; others: number }) => {
    switch (given.in) {
      case "zip":
        return [
          "Expected a shapefile or a KML file in the zip file; it has neither.",
          "Zip the .shp with its .dbf and .prj, or choose the KML or GeoJSON file itself.",
        ];
      case "kml-gpx":
        return [
          "Expected points, lines or polygons; the file has none.",
          "Check that the shapes themselves were saved, not a link to them.",
        ];
      case "file":
        return [
          `Expected outlines or lines; the file has ${given.others === 0 ? "no shapes" : `${plural(given.others, "shape")}, none of them an outline or a line`}.`,
          "Export the outlines as polygons and the lines as lines.",
        ];
    }
  },
  "shapes/holes-left-out": ({ outlines }: { outlines: number }) => [
    `${plural(outlines, "outline")} had holes: only the outer edge is used.`,
    "",
  ],
  "shapes/corners-left-out": ({ shapes, most }: { shapes: number; most: number }) => [
    `${plural(shapes, "shape")} with too few or over ${most} corners ${shapes === 1 ? "is" : "are"} left out.`,
    "",
  ],
  "shapes/bad-left-out": ({ shapes }: { shapes: number }) => [
    `${plural(shapes, "shape")} with coordinates that cannot be read ${shapes === 1 ? "is" : "are"} left out.`,
    "",
  ],
} satisfies RefusalTexts;
