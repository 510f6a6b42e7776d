import { ZSTDDecoder } from "zstddec";

let decoder: Promise<ZSTDDecoder> | null = null;

async function start(): Promise<ZSTDDecoder> {
  const fresh = new ZSTDDecoder();
  await fresh.init();
  return fresh;
}

/**
 * Unpacks a Zstandard stream into `bytes` bytes at most, whatever length the stream itself states
 * (geotiff.js believes that). A damaged stream gives nothing.
 */
export async function unpackZstd(packed: ArrayBuffer, bytes: number): Promise<ArrayBuffer> {
  decoder ??= start();
  const unpacked = (await decoder).decode(new Uint8Array(packed), bytes);
  return unpacked.buffer as ArrayBuffer;
}
