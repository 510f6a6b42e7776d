import fc from "fast-check";
import { expect, test } from "vitest";
import { parseNumbers } from "../../workers/raster/ascii/parse-numbers.ts";
import { unpackLzw } from "../../workers/raster/geotiff/unpack-lzw.ts";

const bytesOf = (text: string) => new TextEncoder().encode(text);

test("numbers are read exactly as Number reads them", () => {
  const written = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
    fc.integer().map(String),
    fc
      .float({ noNaN: true, noDefaultInfinity: true, min: -5000, max: 9000 })
      .map((value) => value.toFixed(3)),
    fc.constantFrom("-9999", "+1.50", ".5", "5.", "1e3", "-2.5E-07", "0000012.50"),
  );
  fc.assert(
    fc.property(
      fc.array(written, { minLength: 1, maxLength: 20 }),
      fc.constantFrom(" ", "\n", "\r\n", "\t "),
      (words, gap) => {
        const values = new Float64Array(words.length);
        const parsed = parseNumbers(bytesOf(words.join(gap)), 0, true, values);
        expect(parsed).toMatchObject({ count: words.length, bad: null });
        expect(Array.from(values)).toEqual(words.map(Number));
      },
    ),
    { seed: 11, numRuns: 400 },
  );
});

test("a number cut by the end of a piece is left for the next", () => {
  const values = new Float64Array(4);
  expect(parseNumbers(bytesOf("12 34 5"), 0, false, values)).toMatchObject({ count: 2, used: 6 });
  expect(parseNumbers(bytesOf("12 34 5"), 0, true, values)).toMatchObject({ count: 3, used: 7 });
});

test.each(["5,5", "five", "1.2.3", "--1", "1e", "0x10", "-", "1-2", "7\u00a0"])(
  "%s is no number",
  (word) => {
    expect(parseNumbers(bytesOf(`1 ${word} 2`), 0, true, new Float64Array(4)).bad).not.toBeNull();
  },
);

/** A plain LZW packer by the book (TIFF 6.0, section 13), to unpack again. */
function packLzw(data: Uint8Array): Uint8Array {
  const bits: number[] = [];
  const write = (code: number, width: number) => {
    for (let bit = width - 1; bit >= 0; bit--) bits.push((code >> bit) & 1);
  };
  let table = new Map<string, number>();
  let next = 258;
  let width = 9;
  write(256, 9);
  let held = "";
  const codeOf = (text: string) => (text.length === 1 ? text.charCodeAt(0) : table.get(text)!);
  for (const byte of data) {
    const longer = held + String.fromCharCode(byte);
    if (longer.length === 1 || table.has(longer)) {
      held = longer;
      continue;
    }
    write(codeOf(held), width);
    table.set(longer, next++);
    if (next === 511 || next === 1023 || next === 2047) width++;
    if (next === 4094) {
      write(256, width);
      table = new Map();
      next = 258;
      width = 9;
    }
    held = String.fromCharCode(byte);
  }
  if (held) write(codeOf(held), width);
  write(257, width);
  const packed = new Uint8Array(Math.ceil(bits.length / 8));
  for (const [i, bit] of bits.entries()) packed[i >> 3]! |= bit << (7 - (i & 7));
  return packed;
}

test("LZW unpacks what was packed, and stops at the length asked for", () => {
  const bytes = fc.oneof(
    fc.uint8Array({ minLength: 1, maxLength: 3000 }),
    fc
      .array(fc.integer({ min: 0, max: 2 }), { minLength: 1, maxLength: 9000 })
      .map((list) => Uint8Array.from(list)),
  );
  fc.assert(
    fc.property(bytes, (data) => {
      expect(unpackLzw(packLzw(data), data.length)).toEqual(data);
      expect(unpackLzw(packLzw(data), 1)).toEqual(data.slice(0, 1));
    }),
    { seed: 5, numRuns: 60 },
  );
});

test("LZW noise ends in an error or in bytes, never in a loop", () => {
  fc.assert(
    fc.property(fc.uint8Array({ minLength: 1, maxLength: 400 }), (noise) => {
      try {
        expect(unpackLzw(noise, 4096).length).toBeLessThanOrEqual(4096);
      } catch (thrown) {
        expect(String(thrown)).toContain("not in its table");
      }
    }),
    { seed: 3, numRuns: 500 },
  );
});
