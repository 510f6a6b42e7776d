import { type TiffTags, tiff, tiffBytes } from "./tiff-bytes.ts";

const TILE = 256;
const HEAD_BYTES = 8;

/** What one image of the file says besides its cells. */
interface Layer {
  readonly side: number;
  readonly tags: TiffTags;
}

/**
 * A tiled raster of 32-bit heights with overviews, the largest layer first. All tiles of all layers are one and the
 * same piece of cells, so that a raster of any size is a small file. Each layer's image is wrapped round the file of
 * those before it, whose last directory names it as the next.
 * @param heightAt height at a cell of the piece, in the file's unit
 */
export function layeredRaster(
  layers: readonly Layer[],
  heightAt: (column: number, row: number) => number,
): Uint8Array<ArrayBuffer> {
  const cells = Float32Array.from({ length: TILE * TILE }, (_, i) =>
    heightAt(i % TILE, Math.floor(i / TILE)),
  );
  let held = new Uint8Array(cells.buffer);
  let file = held;
  for (const [i, { side, tags }] of layers.entries()) {
    const isLast = i === layers.length - 1;
    const write = (next: number) =>
      tiffBytes(tagsOf(side, i > 0, cells.byteLength, tags), held, {
        next,
        directoryAt: HEAD_BYTES + cells.byteLength,
      });
    file = write(isLast ? 0 : directoryAfter(write(0).length - HEAD_BYTES));
    held = file.slice(HEAD_BYTES);
  }
  return file;
}

/** Where the directory lies of a file that holds so many bytes between its head and its directory. */
function directoryAfter(bytes: number): number {
  return HEAD_BYTES + Math.ceil(bytes / 8) * 8;
}

function tagsOf(side: number, isOverview: boolean, pieceBytes: number, tags: TiffTags): TiffTags {
  const tiles = Array.from({ length: Math.ceil(side / TILE) ** 2 }, () => 0);
  return {
    ...{ 254: tiff.long(isOverview ? 1 : 0), 256: tiff.long(side), 257: tiff.long(side) },
    ...{ 258: tiff.short(32), 259: tiff.short(1), 262: tiff.short(1), 277: tiff.short(1) },
    ...{ 322: tiff.long(TILE), 323: tiff.long(TILE), 324: tiff.long(...tiles) },
    ...{ 325: tiff.long(...tiles.map(() => pieceBytes)), 339: tiff.short(3) },
    ...tags,
  };
}
