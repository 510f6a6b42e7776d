import { Refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import { readBytes } from "../read-bytes.ts";

/** Read once and kept: holds the directories of most files. */
const HEAD_BYTES = 65_536;

/** No list of a TIFF directory is longer than this in a file that is sound, bytes. */
const MOST_LIST_BYTES = 64_000_000;

interface Slice {
  readonly offset: number;
  readonly length: number;
}

/** Bytes of a file, as geotiff.js asks for them. It reads the directories with it; pixels are read apart. */
export interface BlobSource {
  readonly fileSize: number;
  fetch(slices: Slice[]): Promise<ArrayBuffer[]>;
  fetchSlice(slice: Slice): Promise<Slice & { data: ArrayBuffer }>;
  close(): Promise<void>;
}

/**
 * A source over a `Blob`. geotiff.js guesses the length of some reads, so a read may pass the end of the
 * file by about half; one that asks for much more than there is comes from a broken directory and is refused.
 */
export function blobSource(file: TerrainFile): BlobSource {
  let head: Promise<ArrayBuffer> | null = null;
  const size = file.blob.size;

  const read = async ({ offset, length }: Slice): Promise<ArrayBuffer> => {
    const there = Math.max(0, size - offset);
    if (length > 2 * there + 4096 || length > MOST_LIST_BYTES) throw truncated(file.name);
    if (offset + length <= HEAD_BYTES) {
      head ??= readBytes(file, 0, HEAD_BYTES);
      return (await head).slice(offset, offset + length);
    }
    return readBytes(file, offset, offset + length);
  };

  return {
    fileSize: size,
    fetch: (slices) => Promise.all(slices.map(read)),
    fetchSlice: async (slice) => ({ ...slice, data: await read(slice) }),
    close: async () => {},
  };
}

/** The refusal for a file that ends before what it points to. */
export function truncated(name: string): Refusal {
  return new Refusal(
    "raster/truncated",
    `"${name}" ends before the data it promises: it is cut short or damaged.`,
    "Download or copy the raster again and compare its size with the original.",
  );
}

/** The refusal for a file whose parts contradict each other. */
export function damaged(name: string, what: string): Refusal {
  return new Refusal(
    "raster/damaged",
    `"${name}" is a TIFF, but it is damaged: ${what}.`,
    "Download or copy the raster again, or write it again from its source.",
  );
}

/** The refusal for a sound file of a kind that is not read. */
export function unsupported(name: string, what: string, remedy?: string): Refusal {
  return new Refusal(
    "raster/unsupported",
    `"${name}" is a TIFF of a kind that is not read: ${what}.`,
    remedy ??
      "Write it as a GeoTIFF with one band of numbers, compressed with Deflate, LZW or not at all.",
  );
}
