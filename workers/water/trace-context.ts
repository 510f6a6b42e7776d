import type { LonLat, Plan, Structure } from "../../shared/plan.ts";
import { type PlanPlane, planPlane } from "../../shared/plan-plane.ts";
import { planSite } from "../../shared/site.ts";
import { type SurfaceAt, waterElevationAtGauge, waterSurface } from "../../shared/stage.ts";
import type { TracedSource } from "../../shared/water-types.ts";
import { outlineCells } from "./outline-cells.ts";
import { overPlane } from "./over-plane.ts";
import { type Pipe, pipesOf } from "./pipe-links.ts";
import {
  cellAt,
  columnOf,
  lonLatOf,
  rowOf,
  setEdge,
  type WaterCells,
  type WaterGrid,
} from "./water-grid.ts";

/** A place that is to stay dry, as cells of the grid. */
export interface Footprint {
  readonly id: string;
  readonly name: string;
  readonly cells: readonly number[];
}

/** What a trace works on: ground, water surface, sources and structures on one grid. */
export interface TraceContext {
  readonly plan: Plan;
  readonly plane: PlanPlane;
  /** Heights over the datum. */
  readonly ground: WaterGrid;
  /** Heights over the falling surface: the water is the level `levelM` everywhere on it. */
  readonly grid: WaterGrid;
  /** Water surface at the gauge, metres. */
  readonly levelM: number;
  /** Its links are left out here: which pipes are open is a matter of the state. */
  readonly from: WaterCells;
  readonly pipes: readonly Pipe[];
  readonly sources: readonly TracedSource[];
  readonly footprints: readonly Footprint[];
  /** Cells of all footprints: a hole in one is the building, not a hole. */
  readonly built: ReadonlySet<number>;
}

const lastOver = new WeakMap<WaterGrid, { readonly key: string; readonly grid: WaterGrid }>();

/** @param middle where the plane is put for a plan that holds no line and no structure */
export function traceContext(plan: Plan, ground: WaterGrid, middle: LonLat): TraceContext {
  const isEmpty = plan.alignments.length + plan.structures.length === 0;
  const plane = isEmpty ? planPlane(middle) : planSite(plan, 0).plane;
  const grid = overWater(plan, ground, plane);
  const levelM = waterElevationAtGauge(plan.water);
  const sources = (plan.sources ?? []).map((source): TracedSource => {
    const cell = cellAt(ground, source.at);
    const outside = cell < 0 || ground.outsideCells.includes(cell);
    if (outside) return { ...source, state: "outside", groundM: null };
    const groundM = ground.heightM[cell]!;
    const state = grid.heightM[cell]! >= levelM ? "dry" : "wet";
    return { ...source, state, groundM: Number.isNaN(groundM) ? null : groundM };
  });
  const onGround = sources.filter(({ state }) => state !== "outside");
  const from: WaterCells = {
    edge: onGround.length === 0 || onGround.length < sources.length,
    cells: onGround.map(({ at }) => cellAt(ground, at)),
  };
  setEdge(grid, from.edge);
  const footprints = plan.structures.map((structure) => footprintOf(ground, structure));
  const built = new Set(footprints.flatMap(({ cells }) => cells));
  const drop = dropOf(plan, plane);
  const dropAt = (cell: number) => drop(...plane.toPlane(lonLatOf(grid, cell)));
  const pipes = pipesOf({ plan, ground, grid, from, dropAt });
  return { plan, plane, ground, grid, levelM, from, pipes, sources, footprints, built };
}

function footprintOf(grid: WaterGrid, { id, name, outline }: Structure): Footprint {
  return { id, name, cells: outlineCells(grid, outline) };
}

/** How much higher the water stands at a place than at the gauge: negative downstream. */
function dropOf(plan: Plan, plane: PlanPlane): SurfaceAt {
  const surface = waterSurface(plan.water, plan.flow, plan.gauge, plane);
  const atGaugeM = waterElevationAtGauge(plan.water);
  return (xM, yM) => surface(xM, yM) - atGaugeM;
}

function overWater(plan: Plan, ground: WaterGrid, plane: PlanPlane): WaterGrid {
  const { flow, gauge, water } = plan;
  const key = JSON.stringify([plane.origin, flow, gauge?.at, water.fallPerM]);
  const kept = lastOver.get(ground);
  if (kept?.key === key) return kept.grid;
  const grid = overPlane(ground, dropOf({ ...plan, water }, plane), plane);
  lastOver.set(ground, { key, grid });
  return grid;
}

/** Elevation over the datum, at a cell, of a level over the grid's heights. */
export function elevationAt(context: TraceContext, cell: number, levelM: number): number {
  const { grid, plane, plan } = context;
  const at = grid.place.toLonLat(columnOf(grid, cell), rowOf(grid, cell));
  return levelM + dropOf(plan, plane)(...plane.toPlane(at));
}

/** Ground elevation of a cell; null in a hole or outside the ground. */
export function groundAt({ ground }: TraceContext, cell: number): number | null {
  const heightM = ground.heightM[cell]!;
  return Number.isFinite(heightM) ? heightM : null;
}
