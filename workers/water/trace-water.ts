import { isAnyWater } from "../../shared/checks-trace/whole-plan.ts";
import { wholePlanChecks } from "../../shared/checks-trace.ts";
import { accuracyOf } from "../../shared/ground-accuracy.ts";
import type { CallOptions } from "../../shared/messages.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import {
  type TracedStructure,
  type TracedWater,
  type TraceWaterRequest,
  WATER,
  type WaterTrace,
} from "../../shared/water-types.ts";
import type { Terrain } from "../raster/terrain.ts";
import { inTurns } from "../search/in-turns.ts";
import { stopIfCancelled } from "../stop-if-cancelled.ts";
import { connectedWater } from "./connected-water.ts";
import { inState } from "./grid-state.ts";
import { ifCulverts, wetIfCulverts } from "./if-culverts.ts";
import { riverAsSurveyed } from "./river-as-surveyed.ts";
import { type AlternativeTrace, traceAlternative } from "./trace-alternative.ts";
import { elevationAt, type TraceContext, traceContext } from "./trace-context.ts";
import { traceCulverts } from "./trace-culverts.ts";
import { traceRoads } from "./trace-roads.ts";
import { type TracedState, traceState } from "./trace-state.ts";
import { type GroundLimits, readWaterGround, type WaterGround } from "./water-ground.ts";
import { waterAmounts } from "./wet-amounts.ts";
import { wetMask, withoutPart } from "./wet-mask.ts";

/**
 * Where the water really goes: connected water from the sources, whether each structure is reached and from
 * which level on, without a levee and with each alternative built.
 * @throws Refusal for a plan that is too wide or a line without length, and when it is cancelled
 */
export async function traceWater(
  terrain: Terrain,
  { plan, ids }: TraceWaterRequest,
  options?: CallOptions,
  limits?: GroundLimits,
): Promise<WaterTrace> {
  const ground = await readWaterGround(terrain, cornersOf(plan), options, limits);
  stopIfCancelled(options);
  return inTurns(traceSteps(terrain, ground, plan, ids), options);
}

function cornersOf(plan: Plan): LonLat[] {
  return [
    ...plan.alignments.flatMap((each) => each.corners),
    ...plan.structures.flatMap((each) => each.outline),
  ];
}

/** Larger cells do not show a levee, whose base is seldom under 3 m. Judgement. */
const RESOLVING_CELL_M = 1.5;

interface Step {
  readonly share: number;
  readonly doing: string;
}

function* traceSteps(
  { summary, cells }: Terrain,
  ground: WaterGround,
  plan: Plan,
  ids: readonly string[] | undefined,
): Generator<Step, WaterTrace> {
  const middle = cells.toLonLat((summary.columns - 1) / 2, (summary.rows - 1) / 2);
  const wanted = plan.alignments.filter(({ id }) => !ids || ids.includes(id));
  const share = (done: number) => 0.7 + (0.3 * done) / (wanted.length + 2);

  yield { share: share(0), doing: "Following the water" };
  const context = traceContext(plan, ground.near, middle);
  const state = traceState(context, context.footprints, null);
  const possibleCulverts = traceCulverts(context);
  const possible = ifCulverts(context, possibleCulverts, middle);
  const reached = state.found.map((each) => each.reached);
  const wetIf = possible
    ? wetIfCulverts(possible, context.footprints, reached, null)
    : new Set<string>();
  const structures = state.found.map((_, i) => structureOf(context, state, i, wetIf));
  const river = riverAsSurveyed(context);
  const resolvesLines = ground.near !== ground.whole || ground.near.cellM <= RESOLVING_CELL_M;

  const traces: AlternativeTrace[] = [];
  for (const alignment of wanted) {
    yield {
      share: share(traces.length + 1),
      doing: `Following the water past "${alignment.name}"`,
    };
    traces.push(
      traceAlternative(context, alignment, { state, structures, resolvesLines, possible }, river),
    );
  }

  yield { share: share(wanted.length + 1), doing: "Drawing the water" };
  const chosen = traces.find(({ traced }) => traced.id === plan.chosenId);
  const own = wetMask(context.grid, state.codes, chosen ? behindIt(chosen) : null);
  const far = ground.whole && ground.whole !== ground.near ? ground.whole : null;
  const whole = far ? traceWhole(plan, far, middle) : { context, codes: state.codes };
  const water = {
    ...waterOf(whole.context, whole.codes, ground.whole === null),
    resolvesLines,
  };
  const mask = far
    ? withoutPart(wetMask(whole.context.grid, whole.codes, null), far, ground.near)
    : own;
  const alternatives = traces.map(({ traced }) => traced);
  const { sources } = context;
  const cellM = Math.max(summary.cellXM, summary.cellYM);
  const groundRmseM = accuracyOf(plan.ground, cellM).rmseM;
  const known = isAnyWater(water) ? structures : structures.map(unknown);
  const pipes = context.pipes.map(({ traced }) => traced);
  const roads = isAnyWater(water) ? traceRoads(context) : [];
  const traced = { water, sources, pipes, roads, possibleCulverts, structures: known };
  const checks = wholePlanChecks({ plan, groundRmseM, ...traced });
  return {
    ...{ ...traced, alternatives, checks },
    ...{ mask, nearMask: far ? own : null },
  };
}

/** A building of which nothing is known, for water and elevation data do not belong together. */
function unknown(structure: TracedStructure): TracedStructure {
  return {
    ...structure,
    wet: null,
    sillM: null,
    sillAt: null,
    marginM: null,
    overFloorM: null,
    throughPipe: null,
    wetIfCulvert: false,
  };
}

/** Connected water over all of a large ground, on its coarser cells. */
function traceWhole(plan: Plan, grid: WaterGround["near"], middle: LonLat) {
  const context = traceContext(plan, grid, middle);
  const codes = inState(context, { levee: null, holesHold: false }, (from) =>
    connectedWater(context.grid, from, context.levelM),
  );
  return { context, codes };
}

/**
 * Codes with a levee, the ground under it counted as water still: it is not kept dry but built on. Null where a pipe
 * or a gap under the levee itself may let water in: nothing behind it is then shown as free of water.
 */
function behindIt({ traced, codes, wallCells }: AlternativeTrace): Uint8Array | null {
  const because = traced.notKnown?.because;
  if (because === "pipe-not-known" || because === "hole-under-line") return null;
  const shown = codes.slice();
  for (const cell of wallCells) shown[cell] = WATER;
  return shown;
}

function waterOf(
  context: TraceContext,
  codes: Uint8Array,
  everyCell: boolean,
): Omit<TracedWater, "resolvesLines"> {
  const { grid, from, levelM } = context;
  const amounts = waterAmounts(grid, codes, levelM);
  return {
    elevationM: levelM,
    from: !from.edge ? "sources" : from.cells.length > 0 ? "both" : "edges",
    ...amounts,
    throughHoleCells: amounts.holeCells > 0 ? amounts.cells - cellsAroundHoles(context) : 0,
    cellM: grid.cellM,
    everyCell,
  };
}

/** Wet cells of known ground where no hole lets water through. */
function cellsAroundHoles(context: TraceContext): number {
  const { grid, levelM } = context;
  return inState(context, { levee: null, holesHold: true }, (from) => {
    return waterAmounts(grid, connectedWater(grid, from, levelM), levelM).cells;
  });
}

function structureOf(
  context: TraceContext,
  { codes, found }: TracedState,
  i: number,
  wetIf: ReadonlySet<string>,
): TracedStructure {
  const { grid, levelM, plan } = context;
  const { footprint, reached } = found[i]!;
  const wetCells = footprint.cells.filter((cell) => codes[cell] === WATER);
  const { id, floorM } = plan.structures[i]!;
  const wetIfCulvert = wetIf.has(id);
  const overFloor = (cell: number | undefined) =>
    floorM === null || cell === undefined ? null : elevationAt(context, cell, levelM) - floorM;
  if (wetCells.length === 0) {
    return { ...reached, depthM: null, overFloorM: overFloor(footprint.cells[0]), wetIfCulvert };
  }
  const deepest = wetCells.reduce((low, cell) =>
    grid.heightM[cell]! < grid.heightM[low]! ? cell : low,
  );
  return {
    ...reached,
    depthM: levelM - grid.heightM[deepest]!,
    overFloorM: overFloor(deepest),
    wetIfCulvert,
  };
}
