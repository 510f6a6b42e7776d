import { refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import { maskBeside } from "../geotiff/image-pyramid.ts";
import { type HeightRule, toHeights } from "../heights.ts";
import { maskedLevel } from "../masked-level.ts";
import type { OpenRaster, RasterLevel, SideCars } from "../open-raster.ts";
import { readBytes } from "../read-bytes.ts";
import { fileReference } from "../reference-beside.ts";
import { makeStrays } from "../strays.ts";
import { ASCII_GRID } from "./ascii-grid.ts";
import { type AsciiHeader, readHeader } from "./header.ts";
import { indexRows, readRows } from "./row-index.ts";

const HEAD_BYTES = 4096;
const CELLS_PER_BLOCK = 262_144;

/** Opens an Esri ASCII grid: its reference comes from the .prj beside it, a mask from its .msk. */
export async function openAsciiGrid(file: TerrainFile, sides: SideCars): Promise<OpenRaster> {
  const { name } = file;
  const head = latin1(new Uint8Array(await readBytes(file, 0, HEAD_BYTES)));
  const header = readHeader(name, head);
  if (!sides.projection) {
    throw refusal("raster/crs-missing", { name, isGrid: true });
  }
  const { horizontal, vertical } = await fileReference(sides.projection);
  const rowAt = await indexRows(file, header);
  const { columns, rows, affine } = header;
  const mask = sides.mask ? await maskBeside(sides.mask, header) : null;
  const strays = makeStrays();
  const noData = header.noData === null ? [] : [header.noData];
  return {
    name,
    bytes: file.blob.size,
    format: ASCII_GRID,
    columns,
    rows,
    affine,
    reference: horizontal,
    vertical,
    levels(metresPerUnit, store) {
      const rule = { noData, scale: 1, offset: 0, metresPerUnit, strays };
      const level = rowsLevel(file, header, rowAt, rule);
      return [mask ? maskedLevel(level, mask, store) : level];
    },
    strays,
    notes: [],
  };
}

function rowsLevel(
  file: TerrainFile,
  { columns, rows }: AsciiHeader,
  rowAt: Float64Array,
  rule: HeightRule,
): RasterLevel {
  const blockRows = Math.max(1, Math.floor(CELLS_PER_BLOCK / columns));
  return {
    columns,
    rows,
    blockColumns: columns,
    blockRows,
    async readBlock(_blockColumn, blockRow) {
      const first = blockRow * blockRows;
      const count = Math.min(blockRows, rows - first);
      const heightsM = new Float32Array(columns * count);
      toHeights(await readRows(file, columns, rowAt, first, count), 1, 0, rule, heightsM);
      return heightsM;
    },
  };
}

/** One character a byte, so that places in the text are places in the file. */
function latin1(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes);
}
