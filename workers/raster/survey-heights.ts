import type { BlockStore } from "./block-store.ts";
import type { RasterLevel } from "./open-raster.ts";

/** Heights of a ground as a whole. */
export interface HeightSurvey {
  readonly lowestM: number;
  readonly highestM: number;
  /** Share of cells without data, 0..1, of what was looked at. */
  readonly holeShare: number;
  /** True when not every cell was looked at. */
  readonly fromOverview: boolean;
}

/** Cells looked at, over all files. */
const MOST_CELLS = 4_000_000;
/** An overview coarser than this says too little, cells. */
const LEAST_CELLS = 60_000;

/** @param rasters levels of each file, full resolution first */
export async function surveyHeights(
  rasters: readonly (readonly RasterLevel[])[],
  store: BlockStore,
): Promise<HeightSurvey> {
  const budget = MOST_CELLS / rasters.length;
  const seen = { lowestM: Infinity, highestM: -Infinity, holes: 0, cells: 0 };
  let fromOverview = false;
  for (const levels of rasters) {
    const chosen = levelFor(levels, budget);
    const blocks = blocksOf(chosen, budget);
    fromOverview ||= chosen !== levels[0] || blocks.length < blockCount(chosen);
    for (const [column, row] of blocks) {
      look(seen, chosen, await store.block(chosen, column, row), column, row);
    }
  }
  return {
    lowestM: seen.lowestM,
    highestM: seen.highestM,
    holeShare: seen.holes / seen.cells,
    fromOverview,
  };
}

/** The finest level within the budget, if that is not too coarse; else full resolution, sampled. */
function levelFor(levels: readonly RasterLevel[], budget: number): RasterLevel {
  const within = levels.find((level) => level.columns * level.rows <= budget);
  if (!within) return levels[0]!;
  return within === levels[0] || within.columns * within.rows >= LEAST_CELLS ? within : levels[0]!;
}

function blockCount(level: RasterLevel): number {
  return Math.ceil(level.columns / level.blockColumns) * Math.ceil(level.rows / level.blockRows);
}

/** All blocks, or as many as the budget allows, spread evenly. */
function blocksOf(level: RasterLevel, budget: number): [number, number][] {
  const across = Math.ceil(level.columns / level.blockColumns);
  const all = blockCount(level);
  const affordable = Math.max(1, Math.floor(budget / (level.blockColumns * level.blockRows)));
  const count = Math.min(all, affordable);
  return Array.from({ length: count }, (_, i) => {
    const index = Math.floor(((i + 0.5) * all) / count);
    return [index % across, Math.floor(index / across)];
  });
}

/** Counts the cells of a block that lie inside the raster. */
function look(
  seen: { lowestM: number; highestM: number; holes: number; cells: number },
  level: RasterLevel,
  block: Float32Array,
  blockColumn: number,
  blockRow: number,
): void {
  const width = Math.min(level.blockColumns, level.columns - blockColumn * level.blockColumns);
  const height = Math.min(level.blockRows, level.rows - blockRow * level.blockRows);
  for (let start = 0; start < height * level.blockColumns; start += level.blockColumns) {
    for (let i = start; i < start + width; i++) {
      const heightM = block[i]!;
      if (Number.isNaN(heightM)) seen.holes++;
      else if (heightM < seen.lowestM) seen.lowestM = heightM;
      if (heightM > seen.highestM) seen.highestM = heightM;
    }
    seen.cells += width;
  }
}
