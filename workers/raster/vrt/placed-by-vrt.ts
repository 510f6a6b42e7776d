import { Refusal, refusal } from "../../../shared/failure.ts";
import { planPlane } from "../../../shared/plan-plane.ts";
import { applyAffine, inverseAffine } from "../affine.ts";
import type { OpenRaster, RasterLevel } from "../open-raster.ts";
import { textReference } from "../reference-beside.ts";
import { unitByName } from "../vertical.ts";
import { withoutValues } from "../without-values.ts";
import type { VrtUse } from "./vrt-files.ts";
import type { PixelRect } from "./vrt-text.ts";

/** A VRT may differ from what the file itself says by this much of a cell. */
const PLACE_TOLERANCE_CELLS = 0.01;
/** The same between two ways to write one reference, metres on the ground. */
const REFERENCE_TOLERANCE_M = 0.05;
/** Heights outside these are taken for missing data anyway, metres. */
const ON_EARTH_M = [-500, 9000] as const;

/**
 * A raster as a VRT uses it: the part it takes, without the numbers that it says mark missing data.
 * @throws Refusal `raster/vrt-unit` when the two state different units, `raster/vrt-place` when the VRT puts it elsewhere than the file itself
 */
export async function placedByVrt(raster: OpenRaster, use: VrtUse): Promise<OpenRaster> {
  const { text, source } = use;
  const whole = { column: 0, row: 0, columns: raster.columns, rows: raster.rows };
  const from = source.from ?? whole;
  const to = source.to ?? { column: 0, row: 0, columns: text.columns, rows: text.rows };
  refuseElsewhere(raster, use, from, to);
  await refuseOtherReference(raster, use);
  const isWhole = farthest(from, whole) < PLACE_TOLERANCE_CELLS;
  const marks = [...new Set([source.noData, text.noData])].filter((each) => each !== null);
  const levels: OpenRaster["levels"] = (metresPerUnit, store) => {
    const own = raster.levels(metresPerUnit, store);
    const hidden = marks
      .map((mark) => mark * metresPerUnit)
      .filter((markM) => markM > ON_EARTH_M[0] && markM < ON_EARTH_M[1]);
    if (isWhole && hidden.length === 0) return own;
    const full = isWhole ? own[0]! : clipped(own[0]!, from);
    return [hidden.length > 0 ? withoutValues(full, hidden) : full];
  };
  const stated = text.unit === null ? null : unitByName(use.vrt, text.unit);
  const unit = raster.vertical.unit ?? stated;
  if (stated !== null && unit !== stated) throw otherUnit(raster.name, use.vrt);
  const { bands } = text;
  const extra = bands > 1 ? [{ kind: "bands" as const, bands, vrt: use.vrt }] : [];
  return {
    ...raster,
    levels,
    vertical: { ...raster.vertical, unit },
    notes: [...raster.notes, ...extra],
  };
}

function otherUnit(name: string, vrt: string): Refusal {
  return refusal("raster/vrt-unit", { name, vrt });
}

function farthest(a: PixelRect, b: PixelRect): number {
  const far = { column: a.column + a.columns, row: a.row + a.rows };
  const farB = { column: b.column + b.columns, row: b.row + b.rows };
  return Math.max(
    ...[Math.abs(a.column - b.column), Math.abs(a.row - b.row)],
    ...[Math.abs(far.column - farB.column), Math.abs(far.row - farB.row)],
  );
}

function refuseElsewhere(
  raster: OpenRaster,
  { vrt, text }: VrtUse,
  from: PixelRect,
  to: PixelRect,
): void {
  const toCell = inverseAffine(raster.affine);
  const [column, row] = toCell(...applyAffine(text.affine, to.column, to.row));
  const [right, bottom] = toCell(
    ...applyAffine(text.affine, to.column + to.columns, to.row + to.rows),
  );
  const placed = { column, row, columns: right - column, rows: bottom - row };
  const off = farthest(placed, from);
  if (off < PLACE_TOLERANCE_CELLS) return;
  throw refusal("raster/vrt-place", { name: raster.name, vrt, cells: off });
}

async function refuseOtherReference(raster: OpenRaster, { vrt, text }: VrtUse): Promise<void> {
  if (text.reference === null) return;
  const stated = await textReference(vrt, text.reference).catch((thrown: unknown) => {
    if (thrown instanceof Refusal) return null;
    throw thrown;
  });
  if (!stated) return;
  const [x, y] = applyAffine(raster.affine, raster.columns / 2, raster.rows / 2);
  const here = raster.reference.toLonLat(x, y);
  const [eastM, northM] = planPlane(here).toPlane(stated.horizontal.toLonLat(x, y));
  if (Math.hypot(eastM, northM) < REFERENCE_TOLERANCE_M) return;
  throw refusal("raster/vrt-reference", {
    ...{ name: raster.name, has: raster.reference.label },
    ...{ vrt, vrtHas: stated.horizontal.label },
  });
}

/** A level with no data outside a rectangle of its cells. */
function clipped(level: RasterLevel, rect: PixelRect): RasterLevel {
  const isIn = (place: number, from: number, count: number) =>
    place + 0.5 > from && place + 0.5 < from + count;
  return {
    ...level,
    async readBlock(blockColumn, blockRow) {
      const heightsM = (await level.readBlock(blockColumn, blockRow)).slice();
      const { blockColumns } = level;
      for (let i = 0; i < heightsM.length; i++) {
        const column = blockColumn * blockColumns + (i % blockColumns);
        const row = blockRow * level.blockRows + Math.floor(i / blockColumns);
        const isKept = isIn(column, rect.column, rect.columns) && isIn(row, rect.row, rect.rows);
        if (!isKept) heightsM[i] = Number.NaN;
      }
      return heightsM;
    },
  };
}
