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
  /** Media type. */
  readonly type: string;
  /** The text of a file, UTF-8. @throws Refusal where the format cannot hold the line */
  readonly write: (exported: Exported, toGrid: ToGrid) => Promise<string>;
}

/** The formats of a line with its stakes. What writes one is loaded when it is needed. */
export const FILE_FORMATS: readonly FileFormat[] = [
  {
    ...{ as: "csv", label: "Stakes, CSV", type: "text/csv" },
    write: async (of) => (await part(() => import("./stakes.ts"))).stakesCsv(of),
  },
  {
    ...{ as: "geojson", label: "Line and stakes, GeoJSON", type: "application/geo+json" },
    write: async (of) => (await part(() => import("./geojson.ts"))).geoJson(of),
  },
  {
    ...{ as: "gpx", label: "Stakes for a GPS, GPX", type: "application/gpx+xml" },
    write: async (of) => (await part(() => import("./gpx.ts"))).gpx(of),
  },
  {
    ...{ as: "kml", label: "Line and stakes, KML", type: "application/vnd.google-earth.kml+xml" },
    write: async (of) => (await part(() => import("./kml.ts"))).kml(of),
  },
  {
    ...{ as: "dxf", label: "Drawing for CAD, DXF", type: "image/vnd.dxf" },
    write: async (of, toGrid) => (await part(() => import("./dxf.ts"))).dxf(of, toGrid),
  },
];

function part<Part>(load: () => Promise<Part>): Promise<Part> {
  return loadPart("the writer of this file format", load);
}
