import { refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import { readBytes } from "../read-bytes.ts";
import type { ImageLayout } from "./image-layout.ts";

/** The pieces an image is stored in: its tiles, or its strips gathered to a size worth reading. */
export interface Strips {
  readonly rowsPerStrip: number;
  /** Strips read together as one block; 1 for tiles. */
  readonly perBlock: number;
  /** Pieces of one band, where each band is stored apart. */
  readonly perBand: number;
  readonly offsets: ArrayLike<number>;
  readonly byteCounts: ArrayLike<number>;
}

/** Strips are read several at a time, up to this many cells. */
const CELLS_PER_READ = 262_144;

/** Tiles as they are; a single uncompressed strip is cut into many, so that a part of it can be read. */
export function stripsOf(layout: ImageLayout): Strips {
  const { columns, rows, blockColumns, blockRows, offsets, byteCounts, tiled } = layout;
  const perBand = Math.ceil(columns / blockColumns) * Math.ceil(rows / blockRows);
  const whole = { rowsPerStrip: blockRows, perBlock: 1, perBand, offsets, byteCounts };
  if (tiled) return whole;
  const rowsPerRead = Math.max(1, Math.floor(CELLS_PER_READ / columns));
  if (layout.compression === 1 && perBand === 1 && blockRows > rowsPerRead) {
    return cutStrip(layout, rowsPerRead);
  }
  return { ...whole, perBlock: Math.max(1, Math.floor(rowsPerRead / blockRows)) };
}

function cutStrip(layout: ImageLayout, rowsPerStrip: number): Strips {
  const bands = layout.planar ? layout.samples : 1;
  const perRow = layout.columns * (layout.planar ? 1 : layout.samples);
  const rowBytes = Math.ceil((perRow * layout.bits) / 8);
  const perBand = Math.ceil(layout.rows / rowsPerStrip);
  const pieces = Array.from({ length: perBand * bands }, (_, i) => {
    const row = (i % perBand) * rowsPerStrip;
    return {
      offset: Number(layout.offsets[Math.floor(i / perBand)]) + row * rowBytes,
      bytes: Math.min(rowsPerStrip, layout.rows - row) * rowBytes,
    };
  });
  return {
    rowsPerStrip,
    perBlock: 1,
    perBand,
    offsets: pieces.map((piece) => piece.offset),
    byteCounts: pieces.map((piece) => piece.bytes),
  };
}

/**
 * Packed bytes of neighbouring pieces, in one read where they follow one another in the file.
 * Null for a piece that the file leaves out.
 * @throws Refusal `raster/truncated`
 */
export async function readPacked(
  file: TerrainFile,
  strips: Strips,
  first: number,
  count: number,
): Promise<(ArrayBuffer | null)[]> {
  const places = Array.from({ length: count }, (_, i) => ({
    offset: Number(strips.offsets[first + i]),
    bytes: Number(strips.byteCounts[first + i]),
  }));
  if (places.length === 1 || !followOneAnother(places)) {
    return Promise.all(places.map((place) => readPlace(file, place.offset, place.bytes)));
  }
  const start = places[0]!.offset;
  const total = places.reduce((sum, place) => sum + place.bytes, 0);
  const whole = await readPlace(file, start, total);
  return places.map(({ offset, bytes }) =>
    whole === null || bytes === 0 ? null : whole.slice(offset - start, offset - start + bytes),
  );
}

function followOneAnother(places: readonly { offset: number; bytes: number }[]): boolean {
  return places.every((place, i) => {
    const before = places[i - 1];
    return !before || place.offset === before.offset + before.bytes;
  });
}

async function readPlace(
  file: TerrainFile,
  offset: number,
  bytes: number,
): Promise<ArrayBuffer | null> {
  if (bytes === 0) return null;
  const read = await readBytes(file, offset, offset + bytes);
  if (read.byteLength < bytes) throw refusal("raster/truncated", { name: file.name });
  return read;
}
