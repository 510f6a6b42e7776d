import type {
  BuildingWater,
  TraceBuildingsRequest,
  TracedBuildings,
} from "../../shared/buildings/check-types.ts";
import type { Building } from "../../shared/buildings/types.ts";
import { timeOf } from "../../shared/defaults.ts";
import { type Refusal, refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { boxAround, planSite } from "../../shared/site.ts";
import { firstAbove, type Hydrograph, hydrographOf } from "../../shared/time/hydrograph.ts";
import { onPlane } from "../lines/search-setup.ts";
import { riverOutlines } from "../lines/water-outlines.ts";
import type { Terrain } from "../raster/terrain.ts";
import { inTurns } from "../search/in-turns.ts";
import { grown } from "../search/search-terms.ts";
import type { SearchStep } from "../search/types.ts";
import { stopIfCancelled } from "../stop-if-cancelled.ts";
import { hasHoles, inState } from "../water/grid-state.ts";
import { outlineCells } from "../water/outline-cells.ts";
import { riverAsSurveyed } from "../water/river-as-surveyed.ts";
import { type TraceContext, traceContext } from "../water/trace-context.ts";
import { lonLatOf, type WaterGrid } from "../water/water-grid.ts";
import { readWaterGround } from "../water/water-ground.ts";
import { missingGround } from "./missing-ground.ts";
import { risingWater } from "./rising-water.ts";
import { FAR_REACH_M } from "./surroundings.ts";

/** How far above the highest water asked about the rising water is followed, meters. */
const HIGHER_M = 3;
/** Ground beyond the surroundings on which a line's base may stand, meters. */
const BASE_M = 12;
const AT_ONCE = 256;

/**
 * Connected water at many buildings: traced once for all of them.
 * @throws Refusal `buildings/no-water` where no ground is under water at all, `cancelled`
 */
export async function traceBuildings(
  terrain: Terrain,
  request: TraceBuildingsRequest,
  options?: CallOptions,
): Promise<TracedBuildings> {
  const box = coveredBox(terrain, request.buildings);
  const { near, whole } = await readWaterGround(terrain, box, options);
  stopIfCancelled(options);
  return inTurns(traceSteps(near, whole === null, request), options);
}

/** Two corners of the box that holds all buildings on the raster; empty without one. */
function coveredBox({ summary }: Terrain, buildings: readonly Building[]): LonLat[] {
  const [west, south, east, north] = summary.bounds;
  const low: [number, number] = [Infinity, Infinity];
  const high: [number, number] = [-Infinity, -Infinity];
  for (const { parts } of buildings) {
    for (const [lon, lat] of parts.flat()) {
      if (!(lon >= west && lon <= east && lat >= south && lat <= north)) continue;
      low[0] = Math.min(low[0], lon);
      low[1] = Math.min(low[1], lat);
      high[0] = Math.max(high[0], lon);
      high[1] = Math.max(high[1], lat);
    }
  }
  if (low[0] > high[0]) return [];
  return [low, [high[0], low[1]], high, [low[0], high[1]]];
}

/** What the water at one building is read from. */
interface Traced {
  readonly context: TraceContext;
  /** Levels with holes that let water pass, and with holes that hold it. */
  readonly open: Float32Array;
  readonly firm: Float32Array;
  readonly river: Uint8Array | null;
  /** The highest water a line may be looked for at. */
  readonly highestM: number;
  readonly firstWet: ((levelM: number) => number | null) | null;
}

function* traceSteps(
  near: WaterGrid,
  everyCell: boolean,
  { plan, buildings, levelsM }: TraceBuildingsRequest,
): Generator<SearchStep, TracedBuildings> {
  const middle = near.place.toLonLat((near.columns - 1) / 2, (near.rows - 1) / 2);
  const context = traceContext({ ...plan, structures: [], alignments: [] }, near, middle);
  const { forecast } = timeOf(plan);
  const hydrograph = forecast && hydrographOf(plan, forecast, "likely");
  const highestM = Math.max(context.levelM, ...levelsM);
  const topM = Math.max(highestM, ...(hydrograph?.levelM ?? [])) + HIGHER_M;
  yield { share: 0.7, doing: "Following the rising water" };
  const open = inState(context, { levee: null, holesHold: false }, (from) =>
    risingWater(context.grid, from, topM),
  );
  if (!open.some((levelM, cell) => levelM < context.levelM && near.heightM[cell]! > -Infinity)) {
    throw noWater(context.levelM);
  }
  yield { share: 0.8, doing: "Following the rising water" };
  const firm = hasHoles(context)
    ? inState(withHolesIn(context, buildings), { levee: null, holesHold: true }, (from) =>
        risingWater(context.grid, from, topM),
      )
    : open;
  yield { share: 0.9, doing: "Looking at the buildings" };
  const river = riverAsSurveyed(context);
  const firstWet = hydrograph && wetFrom(hydrograph);
  const traced: Traced = { context, open, firm, river, highestM, firstWet };
  const waters: BuildingWater[] = [];
  for (const [k, building] of buildings.entries()) {
    if (k % AT_ONCE === 0) {
      yield { share: 0.9 + (0.1 * k) / buildings.length, doing: "Looking at the buildings" };
    }
    waters.push(waterAt(traced, plan, building));
  }
  return { waters, trace: { cellM: near.cellM, everyCell } };
}

function wetFrom(hydrograph: Hydrograph): (levelM: number) => number | null {
  const above = firstAbove(hydrograph, hydrograph.atS[0]!);
  return (levelM) => {
    const atS = above(levelM);
    return atS === null ? null : Math.floor(atS);
  };
}

/** The same context in which a hole in a footprint is the building: it never holds water back. */
function withHolesIn(context: TraceContext, buildings: readonly Building[]): TraceContext {
  const built = new Set<number>();
  for (const { parts } of buildings) {
    for (const cell of parts.flatMap(cellsOn(context))) {
      if (Number.isNaN(context.ground.heightM[cell]!)) built.add(cell);
    }
  }
  return { ...context, built };
}

function cellsOn({ ground }: TraceContext): (outline: readonly LonLat[]) => number[] {
  return (outline) => outlineCells(ground, outline);
}

function waterAt(traced: Traced, plan: Plan, building: Building): BuildingWater {
  const { context, open, firm, highestM, firstWet } = traced;
  const { grid, ground, levelM } = context;
  const { id, parts } = building;
  const missing = missingGround(ground, parts);
  if (missing) return { ...UNKNOWN, id, at: missing };
  const cells = parts.flatMap(cellsOn(context));
  const sillM = leastOf(open, cells);
  const isWet = sillM < levelM;
  if (isWet && !(leastOf(firm, cells) < levelM)) {
    return { ...UNKNOWN, id, at: lonLatOf(ground, cells[0]!) };
  }
  let lowestM = levelM;
  for (const cell of cells) {
    if (open[cell]! < levelM && grid.heightM[cell]! < lowestM) lowestM = grid.heightM[cell]!;
  }
  const isSearched = sillM < highestM;
  const around = isSearched ? surroundingsOf(traced, plan, building) : null;
  return {
    id,
    state: isWet ? "flooded" : "dry",
    depthM: levelM - lowestM,
    sillM: Number.isFinite(sillM) ? sillM : null,
    lowM: lowestOf(grid.heightM, cells),
    firstWetAtS: firstWet?.(sillM) ?? null,
    aroundM: around?.levelM ?? null,
    at: null,
    river: around?.river ?? [],
  };
}

const UNKNOWN: Omit<BuildingWater, "id"> = {
  state: "no-data",
  ...{ depthM: null, sillM: null, lowM: null, firstWetAtS: null, aroundM: null, at: null },
  river: [],
};

function leastOf(levels: Float32Array, cells: readonly number[]): number {
  return cells.reduce((least, cell) => Math.min(least, levels[cell]!), Number.POSITIVE_INFINITY);
}

/** Lowest of the known heights; null without one. A hole that is the building holds none. */
function lowestOf(heights: Float32Array, cells: readonly number[]): number | null {
  const known = cells.map((cell) => heights[cell]!).filter(Number.isFinite);
  return known.length === 0 ? null : known.reduce((a, b) => Math.min(a, b));
}

/** The water and the river in the box in which a line round a building may run. */
function surroundingsOf({ context, open, river }: Traced, plan: Plan, { parts }: Building) {
  const { plane } = planSite({ ...plan, alignments: [], structures: parts.map(asStructure) }, 0);
  const outlines = parts.map((outline) => onPlane(plane, outline));
  const box = grown(boxAround(outlines.flat()), FAR_REACH_M + BASE_M);
  const corners: LonLat[] = [
    plane.toLonLat(box.minX, box.minY),
    plane.toLonLat(box.maxX, box.minY),
    plane.toLonLat(box.maxX, box.maxY),
    plane.toLonLat(box.minX, box.maxY),
  ];
  const levelM = leastInBox(open, context.grid, corners);
  const near = context.ground;
  const outlined = river ? riverOutlines({ near, river, plane, box }, outlines) : [];
  return {
    levelM: Number.isFinite(levelM) ? levelM : null,
    river: outlined.map((outline) => outline.map(([x, y]) => plane.toLonLat(x, y))),
  };
}

/** The least level of the cells in the box of some places. */
function leastInBox(levels: Float32Array, grid: WaterGrid, places: readonly LonLat[]): number {
  const { columns, rows, width, place } = grid;
  const spots = places.map(([longitude, latitude]) => place.toCell(longitude, latitude));
  const range = (values: number[], last: number) => [
    Math.max(0, Math.floor(Math.min(...values))),
    Math.min(last, Math.ceil(Math.max(...values))),
  ];
  const [left, right] = range(
    spots.map(([column]) => column),
    columns - 1,
  ) as [number, number];
  const [top, bottom] = range(
    spots.map(([, row]) => row),
    rows - 1,
  ) as [number, number];
  let least = Number.POSITIVE_INFINITY;
  for (let row = top; row <= bottom; row++) {
    const start = (row + 1) * width + 1;
    for (let cell = start + left; cell <= start + right; cell++) {
      if (levels[cell]! < least) least = levels[cell]!;
    }
  }
  return least;
}

function asStructure(outline: readonly LonLat[]): Plan["structures"][number] {
  return { id: "", name: "", outline, floorM: null };
}

function noWater(levelM: number): Refusal {
  return refusal("buildings/no-water", { levelM });
}
