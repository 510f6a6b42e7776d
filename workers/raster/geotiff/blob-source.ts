import { type Given, type Refusal, refusal } from "../../../shared/failure.ts";
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
    if (length > 2 * there + 4096 || length > MOST_LIST_BYTES)
      throw refusal("raster/truncated", { name: file.name });
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

/** The refusal for a file whose parts contradict each other. */
export function damaged(
  name: string,
  fault: Given<"raster/damaged">["fault"],
  ...of: readonly (string | number)[]
): Refusal {
  return refusal("raster/damaged", { name, fault, of });
}
