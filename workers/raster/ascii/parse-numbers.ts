/** How far a parse came. */
export interface Parsed {
  /** Numbers written. */
  readonly count: number;
  /** Bytes used up; the rest is white space or an unfinished number. */
  readonly used: number;
  /** A word that is no number, or null. */
  readonly bad: string | null;
}

const POWERS = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);
const LONGEST_WORD = 400;

/**
 * Reads numbers divided by white space, as exactly as `Number` does. Words for missing values (nan, inf)
 * become NaN.
 * @param isLast false when more bytes follow, so that a number at the end may be unfinished
 * @param starts where each number begins; may be left out
 */
export function parseNumbers(
  bytes: Uint8Array,
  from: number,
  isLast: boolean,
  values: Float64Array,
  starts?: Int32Array,
): Parsed {
  let at = from;
  let count = 0;
  while (count < values.length) {
    while (at < bytes.length && bytes[at]! <= 32) at++;
    if (at >= bytes.length) break;
    const start = at;
    let mantissa = 0;
    let digits = 0;
    let decimals = 0;
    let isPlain = true;
    let sign = 1;
    if (bytes[at] === 45 || bytes[at] === 43) {
      sign = bytes[at] === 45 ? -1 : 1;
      at++;
    }
    let inFraction = 0;
    for (; at < bytes.length && bytes[at]! > 32; at++) {
      const digit = bytes[at]! - 48;
      if (digit >= 0 && digit <= 9) {
        mantissa = mantissa * 10 + digit;
        digits++;
        decimals += inFraction;
      } else if (digit === -2 && inFraction === 0) {
        inFraction = 1;
      } else {
        isPlain = false;
      }
    }
    if (at >= bytes.length && !isLast) return { count, used: start, bad: longWord(bytes, start) };
    if (starts) starts[count] = start;
    // Up to 15 digits the mantissa is exact, and one division by an exact power of ten rounds correctly.
    if (isPlain && digits > 0 && digits <= 15) {
      values[count++] = (sign * mantissa) / POWERS[decimals]!;
      continue;
    }
    const word = String.fromCharCode(...bytes.subarray(start, Math.min(at, start + LONGEST_WORD)));
    const value = at - start < LONGEST_WORD ? slowNumber(word) : null;
    if (value === null) return { count, used: start, bad: word };
    values[count++] = value;
  }
  return { count, used: at, bad: null };
}

function longWord(bytes: Uint8Array, start: number): string | null {
  if (bytes.length - start < LONGEST_WORD) return null;
  return String.fromCharCode(...bytes.subarray(start, start + LONGEST_WORD));
}

function slowNumber(word: string): number | null {
  if (/^[-+]?(nan|inf|infinity|1\.#\w+)$/i.test(word)) return Number.NaN;
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(word)) return null;
  return Number(word);
}
