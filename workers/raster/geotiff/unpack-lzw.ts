const CLEAR = 256;
const END = 257;
const FIRST_FREE = 258;
const MOST_CODES = 4096;

/**
 * Unpacks no more than `bytes` of TIFF's LZW (TIFF 6.0, section 13). Each code's string is a stretch of
 * what has been unpacked already, so the table holds places in the output instead of strings. Throws
 * where a code is not in the table: libraries at hand are ten times slower (geotiff.js) or never come
 * back from such a code (@developmentseed/lzw-tiff-decoder 0.2.2).
 */
export function unpackLzw(packed: Uint8Array, bytes: number): Uint8Array<ArrayBuffer> {
  const unpacked = new Uint8Array(bytes);
  const startOf = new Uint32Array(MOST_CODES);
  const lengthOf = new Uint32Array(MOST_CODES);
  let free = FIRST_FREE;
  let width = 9;
  let held = 0;
  let heldBits = 0;
  let from = 0;
  let at = 0;
  let previousStart = 0;
  let previousLength = 0;

  while (at < bytes) {
    while (heldBits < width) {
      if (from >= packed.length) return unpacked.slice(0, at);
      held = ((held & 0xffff) << 8) | packed[from++]!;
      heldBits += 8;
    }
    heldBits -= width;
    const code = (held >>> heldBits) & ((1 << width) - 1);
    if (code === END) break;
    if (code === CLEAR) {
      free = FIRST_FREE;
      width = 9;
      previousLength = 0;
      continue;
    }

    // The new string is the previous one and the byte that comes next: they follow one another.
    if (previousLength > 0 && free < MOST_CODES) {
      startOf[free] = previousStart;
      lengthOf[free] = previousLength + 1;
      free++;
    }
    previousStart = at;
    if (code < CLEAR) {
      unpacked[at++] = code;
      previousLength = 1;
    } else {
      if (code >= free) throw new Error("The LZW stream has a code that is not in its table.");
      let source = startOf[code]!;
      previousLength = lengthOf[code]!;
      const end = Math.min(bytes, at + previousLength);
      while (at < end) unpacked[at++] = unpacked[source++]!;
    }
    // TIFF widens one code early.
    if (free + 1 >= 1 << width && width < 12) width++;
  }
  return at < bytes ? unpacked.slice(0, at) : unpacked;
}
