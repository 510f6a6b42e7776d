import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cell, csvText, tabText } from "../../shared/exports/csv.ts";
import { readCsv } from "../helpers/read-csv.ts";

describe("rows for the clipboard of a spreadsheet", () => {
  it("are cells apart by tabs, a line each, whatever is in a cell, and formulas are text", () => {
    const rows = [
      ["Barn\tand\r\nyard", null, -1.5],
      ["=1+1", '"quoted", with a comma', Number.NaN],
    ];
    expect(tabText(rows)).toBe('Barn and yard\t\t-1.5\r\n\'=1+1\t"quoted", with a comma\t\r\n');
    expect(tabText([["\t=cmd|'/c calc'!A0"]])).toBe("' =cmd|'/c calc'!A0\r\n");
  });
});

describe("comma-separated text", () => {
  it("follows the rules of RFC 4180, section 2: CRLF, quotes where needed, quotes doubled", () => {
    expect(csvText([["aaa", "b,bb", 'c"cc', "d\r\nd"]])).toBe('aaa,"b,bb","c""cc","d\r\nd"\r\n');
    expect(csvText([["zzz", null, 1.5]])).toBe("zzz,,1.5\r\n");
    expect(csvText([])).toBe("");
  });

  it.each(["=1+1", "+1", "-1+2", "@SUM(A1)", "\t=1", "\r=1", " =cmd|'/c calc'!A0", "＝1"])(
    "turns the formula-like text %j into text (the signs = + - @ and blanks before them)",
    (text) => {
      const [[cell]] = readCsv(csvText([[text]])) as [[string]];
      expect(cell).toBe(`'${text}`);
    },
  );

  it("leaves numbers, stations and ordinary names as they are", () => {
    expect(csvText([[-3.25, "12+50", "Barn, north", "a=b"]])).toBe(
      '-3.25,12+50,"Barn, north",a=b\r\n',
    );
  });

  it("writes nothing for a number that is none", () => {
    expect(csvText([[Number.NaN, Number.POSITIVE_INFINITY]])).toBe(",\r\n");
  });

  it("is read back as it was, whatever the text", () => {
    const cell = fc.oneof(
      fc.string({ unit: "binary-ascii" }),
      fc.constantFrom('"', "Müller-Höfe", ",", "\r\n", "a\nb"),
    );
    const rows = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { maxLength: 5 });
    fc.assert(
      fc.property(rows, (texts) => {
        const back = readCsv(csvText(texts as Cell[][]));
        expect(back.map((row) => row.map((text) => text.replace(/^'/, "")))).toEqual(
          texts.map((row) => row.map((text) => text.replace(/^'/, ""))),
        );
      }),
      { seed: 4180, numRuns: 80 },
    );
  });
});
