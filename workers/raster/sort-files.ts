import { refusal } from "../../shared/failure.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import { SIDE_CAR_ENDINGS, type SideCarKind } from "../../shared/raster-files.ts";
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

/** Other metadata: known not to be a raster, and not read. */
const UNREAD_ENDING = ".xml";

interface SideCar {
  readonly ending: string;
  readonly kind: SideCarKind | null;
}

function sideCarOf({ name }: TerrainFile): SideCar | null {
  const lower = name.toLowerCase();
  const known = SIDE_CAR_ENDINGS.find(([ending]) => lower.endsWith(ending));
  if (known) return { ending: known[0], kind: known[1] };
  return lower.endsWith(UNREAD_ENDING) ? { ending: UNREAD_ENDING, kind: null } : null;
}

/**
 * Tells rasters and side-cars apart by name, and gives each raster its own: `dem.tif` takes `dem.prj`,
 * `dem.tif.ovr` and so on. A single projection file serves all rasters that have none.
 * @throws Refusal `raster/same-name`
 */
export function sortFiles(files: readonly TerrainFile[]): SortedFiles {
  refuseTwins(files);
  const sideCars = files.filter((file) => sideCarOf(file) !== null);
  const rasterFiles = files.filter((file) => sideCarOf(file) === null);
  const used = new Set<TerrainFile>();

  const own = (file: TerrainFile, kind: SideCarKind): TerrainFile | null => {
    const found = sideCars.find((side) => {
      const sideCar = sideCarOf(side)!;
      const stem = side.name.slice(0, -sideCar.ending.length).toLowerCase();
      return (
        sideCar.kind === kind && (stem === file.name.toLowerCase() || stem === stemOf(file.name))
      );
    });
    if (found) used.add(found);
    return found ?? null;
  };

  const projections = sideCars.filter((side) => sideCarOf(side)!.kind === "projection");
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

/** Files belong together by their names alone. @throws Refusal `raster/same-name` when two have the same */
function refuseTwins(files: readonly TerrainFile[]): void {
  const seen = new Set<string>();
  for (const { name } of files) {
    const lower = name.toLowerCase();
    if (seen.has(lower)) {
      throw refusal("raster/same-name", { name });
    }
    seen.add(lower);
  }
}

function stemOf(name: string): string {
  return name.replace(/\.[^.]*$/, "").toLowerCase();
}
