/** Bytes that are looked at for the zeros of 16-bit characters. */
const LOOKED_AT = 1024;

/**
 * The text of a file as programs save it: UTF-8, or UTF-16 of either byte order, with its byte order mark or without.
 * What is not of that encoding becomes U+FFFD.
 */
export function textOfBytes(bytes: Uint8Array): string {
  return new TextDecoder(encodingOf(bytes)).decode(bytes);
}

function encodingOf(bytes: Uint8Array): "utf-8" | "utf-16le" | "utf-16be" {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return "utf-16le";
  if (first === 0xfe && second === 0xff) return "utf-16be";
  // Without a mark: in a text of plain letters every other byte of UTF-16 is zero, and none of UTF-8.
  const head = bytes.subarray(0, LOOKED_AT);
  const zeros = [0, 0];
  for (let i = 0; i < head.length; i++) if (head[i] === 0) zeros[i % 2]!++;
  const most = 0.4 * head.length;
  if (zeros[1]! > most / 2 && zeros[0] === 0) return "utf-16le";
  return zeros[0]! > most / 2 && zeros[1] === 0 ? "utf-16be" : "utf-8";
}
