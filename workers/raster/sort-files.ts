import type { TerrainFile } from "../../shared/messages.ts";
import type { SideCars } from "./open-raster.ts";

/** A raster and the files that belong to it by name. */
export interface RasterWithSides {
  readonly file: TerrainFile;
  readonly sides: SideCars;
}

export interface SortedFiles {
  readonly rasters: readonly RasterWithSides[];
  /** Side-cars that belong to none of the rasters. */
  readonly loose: readonly TerrainFile[];
}

/** Endings of the files that accompany a raster, and which kind each is; null for what is not read. */
const SIDE_CARS: readonly (readonly [RegExp, keyof SideCars | null])[] = [
  [/\.aux\.xml$/i, "metadata"],
  [/\.prj$/i, "projection"],
  [/\.(tfw|tifw|tiffw|wld|asw)$/i, "world"],
  [/\.ovr$/i, "overviews"],
  [/\.msk$/i, "mask"],
  [/\.xml$/i, null],
];

/**
 * Tells rasters and side-cars apart by name, and gives each raster its own: `dem.tif` takes `dem.prj`,
 * `dem.tif.ovr` and so on. A single projection file serves all rasters that have none.
 */
export function sortFiles(files: readonly TerrainFile[]): SortedFiles {
  const kindOf = (file: TerrainFile) =>
    SIDE_CARS.find(([ending]) => ending.test(file.name)) ?? null;
  const sideCars = files.filter((file) => kindOf(file) !== null);
  const rasterFiles = files.filter((file) => kindOf(file) === null);
  const used = new Set<TerrainFile>();

  const own = (file: TerrainFile, kind: keyof SideCars): TerrainFile | null => {
    const found = sideCars.find((side) => {
      const [ending, sideKind] = kindOf(side)!;
      const stem = side.name.replace(ending, "").toLowerCase();
      return sideKind === kind && (stem === file.name.toLowerCase() || stem === stemOf(file.name));
    });
    if (found) used.add(found);
    return found ?? null;
  };

  const projections = sideCars.filter((side) => kindOf(side)![1] === "projection");
  const shared = projections.length === 1 ? projections[0]! : null;
  const rasters = rasterFiles.map((file) => {
    const projection = own(file, "projection") ?? shared;
    if (projection) used.add(projection);
    const sides: SideCars = {
      projection,
      world: own(file, "world"),
      metadata: own(file, "metadata"),
      overviews: own(file, "overviews"),
      mask: own(file, "mask"),
    };
    return { file, sides };
  });
  return { rasters, loose: sideCars.filter((side) => !used.has(side)) };
}

function stemOf(name: string): string {
  return name.replace(/\.[^.]*$/, "").toLowerCase();
}
