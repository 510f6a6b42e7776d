import { Refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import { type HeightRule, type Samples, toHeights } from "../heights.ts";
import type { RasterLevel } from "../open-raster.ts";
import { damaged } from "./blob-source.ts";
import { CODECS, type Decompress } from "./codecs.ts";
import { samplesOf } from "./decode-block.ts";
import type { ImageLayout } from "./image-layout.ts";
import { readPacked, stripsOf } from "./strips.ts";

/** One image of a TIFF as a level whose cells are heights; transparent cells have no data. */
export function heightLevel(file: TerrainFile, layout: ImageLayout, rule: HeightRule): RasterLevel {
  const { samples, planar, alphaSample } = layout;
  const stride = planar ? 1 : samples;
  const bands = planar && alphaSample !== null ? [0, alphaSample] : [0];
  return blockLevel(file, layout, bands, ([stored, apart], heightsM) => {
    if (!stored) return heightsM.fill(Number.NaN);
    toHeights(stored, stride, 0, rule, heightsM);
    if (alphaSample === null) return heightsM;
    return planar
      ? hideTransparent(heightsM, apart ?? null, 1, 0)
      : hideTransparent(heightsM, stored, stride, alphaSample);
  });
}

/** A mask image as a level of 0 (no data) and other numbers (data). */
export function maskLevel(file: TerrainFile, layout: ImageLayout): RasterLevel {
  return blockLevel(file, layout, [0], ([stored], cells) => {
    if (stored) cells.set(stored);
    return cells;
  });
}

function hideTransparent(
  heightsM: Float32Array,
  alpha: Samples | null,
  stride: number,
  first: number,
): Float32Array {
  for (let i = 0; i < heightsM.length; i++) {
    if (!alpha || alpha[i * stride + first] === 0) heightsM[i] = Number.NaN;
  }
  return heightsM;
}

/**
 * @param bands which bands to read, where each is stored apart
 * @param fill turns the stored numbers of one piece, by band, into cells; null where the file leaves it out
 */
function blockLevel(
  file: TerrainFile,
  layout: ImageLayout,
  bands: readonly number[],
  fill: (stored: readonly (Samples | null)[], cells: Float32Array) => Float32Array,
): RasterLevel {
  const strips = stripsOf(layout);
  const { columns, rows, blockColumns } = layout;
  const blockRows = strips.rowsPerStrip * strips.perBlock;
  const across = Math.ceil(columns / blockColumns);
  const decompress = CODECS[layout.compression]!(layout);

  const readBlock = async (blockColumn: number, blockRow: number): Promise<Float32Array> => {
    const rowsHere = layout.tiled ? blockRows : Math.min(blockRows, rows - blockRow * blockRows);
    const first = layout.tiled ? blockRow * across + blockColumn : blockRow * strips.perBlock;
    const count = Math.ceil(rowsHere / strips.rowsPerStrip);
    const packed = await Promise.all(
      bands.map((band) => readPacked(file, strips, band * strips.perBand + first, count)),
    );
    const cells = new Float32Array(rowsHere * blockColumns);
    const fillPiece = async (piece: number): Promise<void> => {
      const top = piece * strips.rowsPerStrip;
      const height = Math.min(strips.rowsPerStrip, rowsHere - top);
      const stored = await Promise.all(
        packed.map((band) => unpack(file, layout, decompress, band[piece]!, height)),
      );
      fill(stored, cells.subarray(top * blockColumns, (top + height) * blockColumns));
    };
    await Promise.all(Array.from({ length: count }, (_, piece) => fillPiece(piece)));
    return cells;
  };

  return { columns, rows, blockColumns, blockRows, readBlock };
}

async function unpack(
  file: TerrainFile,
  layout: ImageLayout,
  decompress: Decompress,
  packed: ArrayBuffer | null,
  rows: number,
): Promise<Samples | null> {
  if (packed === null) return null;
  const stride = layout.planar ? 1 : layout.samples;
  const perRow = layout.blockColumns * stride;
  const bytes = rows * Math.ceil((perRow * layout.bits) / 8);
  const unpacked = await decompress(packed, bytes).catch((thrown: unknown) => {
    if (thrown instanceof Refusal) throw thrown;
    throw damaged(file.name, "packed");
  });
  if (unpacked.byteLength < bytes) throw damaged(file.name, "short-block");
  return samplesOf(layout, unpacked, rows, perRow, stride);
}
