import { decompress as decompressLzw } from "@developmentseed/lzw-tiff-decoder";
import { type BaseDecoder, getDecoder } from "geotiff";
import type { ImageLayout } from "./image-layout.ts";

/** Decompresses one tile or strip that should hold `bytes` bytes; throws anything when it cannot. */
export type Decompress = (packed: ArrayBuffer, bytes: number) => Promise<ArrayBuffer>;

const DEFLATE = [8, 32946];
const LZW = 5;

/**
 * The decompressor of an image: geotiff.js's own, except for LZW (WebAssembly) and Deflate (the
 * platform's own, which also stops at the length asked for). The predictor is not undone here.
 */
export async function decompressorOf(layout: ImageLayout): Promise<Decompress> {
  if (layout.compression === 1) return async (packed) => packed;
  if (layout.compression === LZW) return async (packed, bytes) => unpackLzw(packed, bytes);
  const decoder = await getDecoder(layout.compression, {
    tileWidth: layout.blockColumns,
    tileHeight: layout.blockRows,
    predictor: 1,
    bitsPerSample: layout.bits,
    planarConfiguration: layout.planar ? 2 : 1,
  });
  if (!DEFLATE.includes(layout.compression)) return (packed) => decode(decoder, packed);
  return (packed, bytes) => inflate(packed, bytes).catch(() => decode(decoder, packed));
}

async function decode(decoder: BaseDecoder, packed: ArrayBuffer): Promise<ArrayBuffer> {
  return (await decoder.decode(packed)) as ArrayBuffer;
}

function unpackLzw(packed: ArrayBuffer, bytes: number): ArrayBuffer {
  return decompressLzw(new Uint8Array(packed), bytes).buffer as ArrayBuffer;
}

/**
 * Unpacks no more than `bytes`, so that a small file cannot unpack to fill the memory. Rejects when the
 * stream is damaged, also when only bytes after its end are.
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
  reader.cancel().catch(() => {});
  return at < bytes ? unpacked.buffer.slice(0, at) : unpacked.buffer;
}
