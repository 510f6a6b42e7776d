import { loadPart } from "../load-part.ts";
import type { OnGrid } from "../messages.ts";
import type { LonLat } from "../plan.ts";
import type { Exported } from "./exported.ts";

/** Puts places on the grid of the elevation data. */
export type ToGrid = (places: readonly LonLat[]) => Promise<OnGrid>;

/** A format that a line leaves the program in. */
export interface FileFormat {
  /** Its name, the ending of its files too. */
  readonly as: "csv" | "geojson" | "gpx" | "kml" | "dxf";
  /** What it holds of a line, as a button says it. */
  readonly label: string;
  /** The same as one word of a file's name. */
  readonly what: "stakes" | "line";
  /** Media type. */
  readonly type: string;
  /** The text of a file, UTF-8. @throws Refusal where the format cannot hold the line */
  readonly write: (exported: Exported, toGrid: ToGrid) => Promise<string>;
}

const LOAD = {
  csv: () => import("./stakes.ts"),
  geojson: () => import("./geojson.ts"),
  gpx: () => import("./gpx.ts"),
  kml: () => import("./kml.ts"),
  dxf: () => import("./dxf.ts"),
};

/** The formats of a line with its stakes. What writes one is loaded when it is needed. */
export const FILE_FORMATS: readonly FileFormat[] = [
  {
    ...{ as: "csv", what: "stakes", label: "Stakes, CSV", type: "text/csv" },
    write: async (of, toGrid) => (await part(LOAD.csv)).stakesCsv(of, toGrid),
  },
  {
    ...{ as: "geojson", what: "line", label: "Line and stakes, GeoJSON" },
    type: "application/geo+json",
    write: async (of) => (await part(LOAD.geojson)).geoJson(of),
  },
  {
    ...{ as: "gpx", what: "stakes", label: "Stakes for a GPS receiver, GPX" },
    type: "application/gpx+xml",
    write: async (of) => (await part(LOAD.gpx)).gpx(of),
  },
  {
    ...{ as: "kml", what: "line", label: "Line and stakes, KML" },
    type: "application/vnd.google-earth.kml+xml",
    write: async (of) => (await part(LOAD.kml)).kml(of),
  },
  {
    ...{ as: "dxf", what: "line", label: "Drawing for CAD, DXF", type: "image/vnd.dxf" },
    write: async (of, toGrid) => (await part(LOAD.dxf)).dxf(of, toGrid),
  },
];

/** Fetches what writes each format: the network may be gone when it is needed. */
export function loadFormats(): Promise<unknown> {
  return Promise.allSettled(Object.values(LOAD).map((load) => load()));
}

function part<Part>(load: () => Promise<Part>): Promise<Part> {
  return loadPart("the writer of this file format", load);
}
