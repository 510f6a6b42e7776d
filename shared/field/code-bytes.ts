/** Whole numbers and short texts one after another, each number in as few bytes as it needs (LEB128). */
export class ByteWriter {
  private readonly bytes: number[] = [];

  /** A whole number from 0 to 2^53. */
  number(value: number): void {
    let rest = value;
    while (rest >= 0x80) {
      this.bytes.push((rest % 0x80) + 0x80);
      rest = Math.floor(rest / 0x80);
    }
    this.bytes.push(rest);
  }

  text(value: string): void {
    const utf8 = new TextEncoder().encode(value);
    this.number(utf8.length);
    for (const byte of utf8) this.bytes.push(byte);
  }

  done(): Uint8Array {
    return Uint8Array.from(this.bytes);
  }
}

/** Reads what {@link ByteWriter} wrote; what is not whole reads as null, and so does all after it. */
export class ByteReader {
  private at = 0;
  private isBroken = false;

  constructor(private readonly bytes: Uint8Array) {}

  number(): number | null {
    let value = 0;
    for (let factor = 1; factor <= 2 ** 49; factor *= 0x80) {
      const byte = this.bytes[this.at++];
      if (byte === undefined || this.isBroken) return this.broken();
      value += (byte % 0x80) * factor;
      if (byte < 0x80) return Number.isSafeInteger(value) ? value : this.broken();
    }
    return this.broken();
  }

  text(mostBytes: number): string | null {
    const length = this.number();
    if (length === null || length > mostBytes || this.at + length > this.bytes.length) {
      return this.broken();
    }
    const part = this.bytes.subarray(this.at, this.at + length);
    this.at += length;
    try {
      return new TextDecoder("utf-8", { fatal: true }).decode(part);
    } catch {
      return this.broken();
    }
  }

  /** Whether all was read and all was whole. */
  isDone(): boolean {
    return !this.isBroken && this.at === this.bytes.length;
  }

  private broken(): null {
    this.isBroken = true;
    return null;
  }
}

const DIGITS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

/** Bytes as text of the letters that a QR code holds most densely. Source: RFC 9285 (Base45). */
export function toBase45(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 2) {
    const isPair = i + 1 < bytes.length;
    let rest = isPair ? bytes[i]! * 256 + bytes[i + 1]! : bytes[i]!;
    for (let k = 0; k < (isPair ? 3 : 2); k++) {
      text += DIGITS[rest % 45];
      rest = Math.floor(rest / 45);
    }
  }
  return text;
}

/** The bytes of such a text; null where it is none. */
export function fromBase45(text: string): Uint8Array | null {
  if (text.length % 3 === 1) return null;
  const bytes: number[] = [];
  for (let i = 0; i < text.length; i += 3) {
    const digits = [...text.slice(i, i + 3)].map((letter) => DIGITS.indexOf(letter));
    if (digits.includes(-1)) return null;
    const value = digits.reduceRight((sum, digit) => sum * 45 + digit, 0);
    if (value > (digits.length === 3 ? 0xffff : 0xff)) return null;
    if (digits.length === 3) bytes.push(value >> 8);
    bytes.push(value & 0xff);
  }
  return Uint8Array.from(bytes);
}

/** 32-bit FNV-1a, for telling one message from another and whole from damaged. */
export function fnv1a(bytes: Uint8Array): number {
  let hash = 0x811c9dc5;
  for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193);
  return hash >>> 0;
}
