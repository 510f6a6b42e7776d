import type { BlockStore } from "./block-store.ts";
import { type Extremes, makeExtremes } from "./extremes.ts";
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
/** Cells of full resolution looked at beside an overview, over all files: an overview may hold means. */
const SAMPLE_CELLS = 1_000_000;
/** An overview coarser than this says too little, cells. */
const LEAST_CELLS = 60_000;

type Place = readonly [number, number];

/** A height and the cell of its level that holds it. */
interface Met {
  readonly heightM: number;
  readonly cell: Place;
}

interface Seen {
  lowest: Met;
  highest: Met;
  holes: number;
  cells: number;
}

/**
 * @param rasters levels of each file, full resolution first
 * @returns the survey, and the extremes among the cells looked at in full resolution
 */
export async function surveyHeights(
  rasters: readonly (readonly RasterLevel[])[],
  store: BlockStore,
): Promise<{ readonly heights: HeightSurvey; readonly extremes: Extremes }> {
  const extremes = makeExtremes();
  const all: Seen[] = [];
  let fromOverview = false;
  for (const [source, levels] of rasters.entries()) {
    const full = levels[0]!;
    const budget = MOST_CELLS / rasters.length;
    const chosen = levelFor(levels, budget);
    const blocks = blocksOf(chosen, budget);
    const seen = nothingSeen();
    all.push(seen);
    for (const place of blocks) {
      const block = await store.block(chosen, ...place);
      look(seen, chosen, block, place);
      if (chosen === full) lookForExtremes(extremes, full, block, place, source);
    }
    fromOverview ||= chosen !== full || blocks.length < blockCount(chosen);
    if (chosen === full) continue;
    for (const place of sampleOf(full, chosen, seen, SAMPLE_CELLS / rasters.length)) {
      lookForExtremes(extremes, full, await store.block(full, ...place), place, source);
    }
  }
  const sum = (count: (seen: Seen) => number) =>
    all.reduce((total, seen) => total + count(seen), 0);
  const heights = {
    lowestM: Math.min(...all.map(({ lowest }) => lowest.heightM)),
    highestM: Math.max(...all.map(({ highest }) => highest.heightM)),
    holeShare: sum(({ holes }) => holes) / sum(({ cells }) => cells),
    fromOverview,
  };
  return { heights, extremes };
}

function nothingSeen(): Seen {
  return {
    lowest: { heightM: Infinity, cell: [0, 0] },
    highest: { heightM: -Infinity, cell: [0, 0] },
    holes: 0,
    cells: 0,
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
function blocksOf(level: RasterLevel, budget: number): Place[] {
  const across = Math.ceil(level.columns / level.blockColumns);
  const all = blockCount(level);
  const affordable = Math.max(1, Math.floor(budget / (level.blockColumns * level.blockRows)));
  const count = Math.min(all, affordable);
  return Array.from({ length: count }, (_, i) => {
    const index = Math.floor(((i + 0.5) * all) / count);
    return [index % across, Math.floor(index / across)];
  });
}

/** Blocks of full resolution, spread evenly, with those under the lowest and the highest cell of an overview. */
function sampleOf(full: RasterLevel, overview: RasterLevel, seen: Seen, budget: number): Place[] {
  if (full.blockColumns * full.blockRows > MOST_CELLS) return [];
  const under = [seen.lowest, seen.highest].map(({ cell: [column, row] }): Place => {
    const fullColumn = ((column + 0.5) * full.columns) / overview.columns;
    const fullRow = ((row + 0.5) * full.rows) / overview.rows;
    return [Math.floor(fullColumn / full.blockColumns), Math.floor(fullRow / full.blockRows)];
  });
  const places = [...under, ...blocksOf(full, budget)];
  return [...new Map(places.map((place) => [String(place), place])).values()];
}

/** Counts the cells of a block that lie inside the raster. */
function look(seen: Seen, level: RasterLevel, block: Float32Array, place: Place): void {
  const { left, top, width, height } = insideOf(level, place);
  let [lowestM, highestM] = [seen.lowest.heightM, seen.highest.heightM];
  let [lowestAt, highestAt] = [-1, -1];
  for (let row = 0; row < height; row++) {
    const start = row * level.blockColumns;
    for (let i = start; i < start + width; i++) {
      const heightM = block[i]!;
      if (Number.isNaN(heightM)) seen.holes++;
      else if (heightM < lowestM) [lowestM, lowestAt] = [heightM, i];
      if (heightM > highestM) [highestM, highestAt] = [heightM, i];
    }
  }
  seen.cells += width * height;
  const cellAt = (i: number): Place => [
    left + (i % level.blockColumns),
    top + Math.floor(i / level.blockColumns),
  ];
  if (lowestAt >= 0) seen.lowest = { heightM: lowestM, cell: cellAt(lowestAt) };
  if (highestAt >= 0) seen.highest = { heightM: highestM, cell: cellAt(highestAt) };
}

function lookForExtremes(
  extremes: Extremes,
  level: RasterLevel,
  block: Float32Array,
  place: Place,
  source: number,
): void {
  const { width, height } = insideOf(level, place);
  for (let row = 0; row < height; row++) {
    const start = row * level.blockColumns;
    extremes.look(block, start, start + width, source);
  }
}

/** The part of a block that lies inside the raster, cells. */
function insideOf(level: RasterLevel, [blockColumn, blockRow]: Place) {
  const left = blockColumn * level.blockColumns;
  const top = blockRow * level.blockRows;
  const width = Math.min(level.blockColumns, level.columns - left);
  const height = Math.min(level.blockRows, level.rows - top);
  return { left, top, width, height };
}
