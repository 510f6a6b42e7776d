import type { BlockStore } from "./block-store.ts";
import { type BuiltOverview, builtOverview, type Kept } from "./built-overview.ts";
import type { OpenRaster, RasterLevel } from "./open-raster.ts";
import { makeReducedStore, reducedLevel } from "./reduced-level.ts";

/** Cells of the finer level along one side of a reduced cell, from one level to the next. */
const FACTOR = 4;
/** A level wider or higher than this needs a coarser one. */
const COARSEST = 1024;
/** Cells of all built overviews together: 64 MB. */
const BUILT_CELLS = 16_000_000;

/** The levels that pictures of one raster are made from. */
export interface ShownLevels {
  /** Full resolution first. */
  readonly levels: readonly RasterLevel[];
  /** The one among them that takes a sweep over the whole raster; null when none does. */
  readonly built: BuiltOverview | null;
}

/**
 * Adds coarser levels where a raster has no overview small enough: fine ones made block by block as they are needed,
 * and from the first that fits into memory on, all from one sweep. So a picture of any part reads a bounded number
 * of cells at a time, whatever the size of the file.
 * @param rasters all rasters of the terrain, with their own levels
 * @param keptAs where an overview built of a raster is kept between visits
 */
export function shownLevels(
  rasters: ReadonlyMap<OpenRaster, readonly RasterLevel[]>,
  store: BlockStore,
  keptAs: (raster: OpenRaster) => Kept | null,
): ReadonlyMap<OpenRaster, ShownLevels> {
  const made = makeReducedStore();
  const budget = BUILT_CELLS / rasters.size;
  return new Map(
    [...rasters].map(([raster, own]) => [
      raster,
      withCoarser(own, budget, store, made, keptAs(raster)),
    ]),
  );
}

function withCoarser(
  own: readonly RasterLevel[],
  budget: number,
  store: BlockStore,
  made: BlockStore,
  kept: Kept | null,
): ShownLevels {
  const base = own.at(-1)!;
  const levels = [...own];
  let built: BuiltOverview | null = null;
  const isTooLarge = ({ columns, rows }: RasterLevel) =>
    Math.max(columns, rows) > COARSEST || (!built && columns * rows > budget);
  for (let factor = FACTOR; isTooLarge(levels.at(-1)!); factor *= FACTOR) {
    const cells = Math.ceil(base.columns / factor) * Math.ceil(base.rows / factor);
    if (built) {
      levels.push(reducedLevel(levels.at(-1)!, FACTOR, store, made));
    } else if (cells > budget) {
      levels.push(reducedLevel(base, factor, store, made));
    } else {
      built = builtOverview(base, factor, kept);
      levels.push(built.level);
    }
  }
  return { levels, built };
}
