import { ZSTDDecoder } from "zstddec/stream";

/** A damaged stream stops giving bytes without saying so. */
const MOST_EMPTY_PARTS = 16;

let decoder: Promise<ZSTDDecoder> | null = null;

async function start(): Promise<ZSTDDecoder> {
  const fresh = new ZSTDDecoder();
  await fresh.init();
  return fresh;
}

/**
 * Unpacks no more than `bytes` of a Zstandard stream. Part by part, because the whole-block call of the
 * library believes the length that the stream states.
 */
export async function unpackZstd(packed: ArrayBuffer, bytes: number): Promise<ArrayBuffer> {
  decoder ??= start();
  const unpacked = new Uint8Array(bytes);
  let at = 0;
  let empty = 0;
  for (const part of (await decoder).decodeStreaming([new Uint8Array(packed)])) {
    empty = part.length === 0 ? empty + 1 : 0;
    if (empty > MOST_EMPTY_PARTS) throw new Error("The Zstandard stream is damaged.");
    unpacked.set(part.subarray(0, bytes - at), at);
    at = Math.min(bytes, at + part.length);
    if (at === bytes) break;
  }
  return at < bytes ? unpacked.buffer.slice(0, at) : unpacked.buffer;
}
