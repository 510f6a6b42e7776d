import { expect, test } from "vitest";
import { textOfBytes } from "../../shared/text-of-bytes.ts";

const TEXT = "time\tstage\r\n04/06/2026 07:00 CDT\t28.4 ft\r\n";

const sixteen = (text: string, isBig: boolean) => {
  const bytes = Buffer.from(text, "utf16le");
  return new Uint8Array(isBig ? bytes.swap16() : bytes);
};

test.each([
  ["UTF-8", new TextEncoder().encode(TEXT)],
  ["UTF-8 with its mark", new TextEncoder().encode(`\uFEFF${TEXT}`)],
  ["UTF-16, little end first, with its mark", sixteen(`\uFEFF${TEXT}`, false)],
  ["UTF-16, big end first, with its mark", sixteen(`\uFEFF${TEXT}`, true)],
  ["UTF-16, little end first, without a mark", sixteen(TEXT, false)],
  ["UTF-16, big end first, without a mark", sixteen(TEXT, true)],
])("a table saved as %s is the same text", (_how, bytes) => {
  expect(textOfBytes(bytes)).toBe(TEXT);
});

test("nothing is nothing, and a binary file is taken for no 16-bit text", () => {
  expect(textOfBytes(new Uint8Array(0))).toBe("");
  expect(textOfBytes(new Uint8Array(2000))).toHaveLength(2000);
});
