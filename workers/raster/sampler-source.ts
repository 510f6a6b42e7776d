import type { GroundSampler } from "../../shared/ground.ts";
import type { LonLat } from "../../shared/plan.ts";
import { samePlace } from "../../shared/plan-geometry.ts";
import type { PlanPlane } from "../../shared/plan-plane.ts";
import { holdsBox, type PlaneBox } from "../../shared/site.ts";
import { heldWindows } from "./held-windows.ts";
import { type Lattice, makeLattice } from "./lattice.ts";
import type { Locator } from "./locate.ts";
import type { Mosaic, MosaicCells } from "./mosaic.ts";
import { makeSampler } from "./sampler.ts";
import { type CellWindow, MOST_CELLS } from "./window.ts";

/** More ground than asked is read, so that a line can be dragged about without reading again. */
const MARGIN_SHARE = 0.15;
const LEAST_MARGIN_M = 40;
/** Samplers kept ready. */
const KEPT_SAMPLERS = 4;

interface Prepared {
  readonly origin: LonLat;
  /** What was asked, and once it is ready the somewhat larger box that it covers. */
  box: PlaneBox;
  readonly sampler: Promise<GroundSampler>;
}

/** Heights over boxes of a plan plane. */
interface SamplerSource {
  readonly samplerFor: (plane: PlanPlane, box: PlaneBox) => Promise<GroundSampler>;
  readonly ownSampler: (plane: PlanPlane, box: PlaneBox) => Promise<GroundSampler>;
}

/**
 * Makes samplers and keeps the ground they read. A request that lies inside ground already read, or being
 * read, waits for that.
 */
export function makeSamplerSource(
  mosaic: Mosaic,
  locator: Locator,
  read: (window: CellWindow) => Promise<MosaicCells>,
): SamplerSource {
  let prepared: Prepared[] = [];
  const cellsOf = heldWindows(read);

  const prepare = async (
    plane: PlanPlane,
    wanted: PlaneBox,
  ): Promise<{ sampler: GroundSampler; box: PlaneBox }> => {
    const [cellXM, cellYM] = cellSizeM(locator, plane, wanted);
    const toCell = (xM: number, yM: number): [number, number] => {
      const [longitude, latitude] = plane.toLonLat(xM, yM);
      return locator.toCell(longitude, latitude);
    };
    const cellM = Math.max(cellXM, cellYM);
    const padded = makeLattice(padding(wanted), toCell, cellM);
    const fits = cellsIn(windowOf(padded, mosaic)) <= MOST_CELLS;
    const lattice = fits ? padded : makeLattice(wanted, toCell, cellM);
    const cells = await cellsOf(windowOf(lattice, mosaic));
    const longCellM = cellM * cells.coarsest;
    const sampler = makeSampler(lattice, cells, mosaic, [Math.min(cellXM, cellYM), longCellM]);
    return { sampler, box: lattice.box };
  };

  const samplerFor: SamplerSource["samplerFor"] = (plane, box) => {
    const ready = prepared.find(
      (each) => samePlace(each.origin, plane.origin) && holdsBox(each.box, box),
    );
    if (ready) return ready.sampler;
    const work = prepare(plane, box);
    const fresh: Prepared = { origin: plane.origin, box, sampler: work.then((it) => it.sampler) };
    work.then(
      (it) => {
        fresh.box = it.box;
      },
      () => {
        prepared = prepared.filter((each) => each !== fresh);
      },
    );
    prepared = [fresh, ...prepared].slice(0, KEPT_SAMPLERS);
    return fresh.sampler;
  };
  const ownSampler: SamplerSource["ownSampler"] = async (plane, box) =>
    (await prepare(plane, box)).sampler;
  return { samplerFor, ownSampler };
}

function padding(box: PlaneBox): PlaneBox {
  const side = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const marginM = Math.max(LEAST_MARGIN_M, MARGIN_SHARE * side);
  return {
    minX: box.minX - marginM,
    minY: box.minY - marginM,
    maxX: box.maxX + marginM,
    maxY: box.maxY + marginM,
  };
}

/** The cells that a lattice reaches, no further than the raster. */
function windowOf({ reach }: Lattice, { columns, rows }: Mosaic): CellWindow {
  const left = clamp(Math.floor(reach.minX), columns);
  const top = clamp(Math.floor(reach.minY), rows);
  return {
    column: left,
    row: top,
    columns: clamp(Math.ceil(reach.maxX) + 1, columns) - left,
    rows: clamp(Math.ceil(reach.maxY) + 1, rows) - top,
  };
}

function clamp(value: number, last: number): number {
  return Math.min(last, Math.max(0, value));
}

function cellsIn(window: CellWindow): number {
  return window.columns * window.rows;
}

/** Width and height of one cell at the middle of a box, metres on the ground. */
function cellSizeM(locator: Locator, plane: PlanPlane, box: PlaneBox): [number, number] {
  const [longitude, latitude] = plane.toLonLat(
    (box.minX + box.maxX) / 2,
    (box.minY + box.maxY) / 2,
  );
  const [column, row] = locator.toCell(longitude, latitude);
  const here = plane.toPlane([longitude, latitude]);
  const next = plane.toPlane(locator.toLonLat(column + 1, row));
  const below = plane.toPlane(locator.toLonLat(column, row + 1));
  return [
    Math.hypot(next[0] - here[0], next[1] - here[1]),
    Math.hypot(below[0] - here[0], below[1] - here[1]),
  ];
}
