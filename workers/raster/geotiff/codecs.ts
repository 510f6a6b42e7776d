import { getDecoder } from "geotiff";
import { loadPart } from "../../../shared/load-part.ts";
import type { ImageLayout } from "./image-layout.ts";
import { tagNumbers } from "./tags.ts";
import { unpackLzw } from "./unpack-lzw.ts";

/** Decompresses one tile or strip that should hold `bytes` bytes; rejects with anything when it cannot. */
export type Decompress = (packed: ArrayBuffer, bytes: number) => Promise<ArrayBuffer>;

/** Compression schemes that are read, by the number in the Compression tag. */
export const CODECS: Readonly<Record<number, (layout: ImageLayout) => Decompress>> = {
  1: () => async (packed) => packed,
  5: () => async (packed, bytes) => unpackLzw(new Uint8Array(packed), bytes).buffer,
  8: deflate,
  32773: packBits,
  32946: deflate,
  34887: lerc,
  50000: () => zstd,
};

/** The platform's own inflate; geotiff.js's where the stream is followed by other bytes. */
function deflate(layout: ImageLayout): Decompress {
  const patient = fromGeotiff(layout, 8);
  return (packed, bytes) => inflate(packed, bytes).catch(() => patient(packed, bytes));
}

function packBits(layout: ImageLayout): Decompress {
  return fromGeotiff(layout, 32773);
}

async function zstd(packed: ArrayBuffer, bytes: number): Promise<ArrayBuffer> {
  const part = await loadPart("the Zstandard decoder", () => import("./unpack-zstd.ts"));
  return part.unpackZstd(packed, bytes);
}

/** LERC comes bare, or packed once more with Deflate (1) or Zstandard (2). */
function lerc(layout: ImageLayout): Decompress {
  const packing = tagNumbers(layout.directory, "LercParameters")[1] ?? 0;
  return async (packed, bytes) => {
    const most = 2 * bytes + 65_536;
    const { unpackLerc } = await loadPart("the LERC decoder", () => import("./unpack-lerc.ts"));
    if (packing === 1) return unpackLerc(await inflate(packed, most), bytes, layout);
    if (packing === 2) return unpackLerc(await zstd(packed, most), bytes, layout);
    return unpackLerc(packed, bytes, layout);
  };
}

/** geotiff.js's decompressor, with the predictor left for us to undo; fetched when a block first needs it. */
function fromGeotiff(layout: ImageLayout, compression: number): Decompress {
  const parameters = {
    tileWidth: layout.blockColumns,
    tileHeight: layout.blockRows,
    predictor: 1,
    bitsPerSample: layout.bits,
    planarConfiguration: layout.planar ? 2 : 1,
  };
  return async (packed) => {
    const decoder = await loadPart("a decoder of GeoTIFF blocks", () =>
      getDecoder(compression, parameters),
    );
    return (await decoder.decode(packed)) as ArrayBuffer;
  };
}

/**
 * Unpacks no more than `bytes`, so that a small file cannot unpack to fill the memory. Rejects when the
 * stream is damaged or its checksum does not agree, also when only bytes after its end are in the way.
 */
async function inflate(packed: ArrayBuffer, bytes: number): Promise<ArrayBuffer> {
  const { readable, writable } = new DecompressionStream("deflate");
  const writer = writable.getWriter();
  const written = Promise.all([writer.write(new Uint8Array(packed)), writer.close()]);
  written.catch(() => {});
  const reader = readable.getReader();
  const unpacked = new Uint8Array(bytes);
  let at = 0;
  while (at < bytes) {
    const { done, value } = await reader.read();
    if (done) break;
    const part = value.subarray(0, bytes - at);
    unpacked.set(part, at);
    at += part.length;
  }
  if (at === bytes) await reader.read();
  reader.cancel().catch(() => {});
  return at < bytes ? unpacked.buffer.slice(0, at) : unpacked.buffer;
}
