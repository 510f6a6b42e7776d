import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { FILE_FORMATS, type ToGrid } from "../../shared/exports/formats.ts";
import { escaped } from "../../shared/exports/xml.ts";
import { CAUTIONS } from "../../shared/words/cautions.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { LEAVE_NOT_SET } from "../../shared/words/leave.ts";
import { mustFixLead, NOT_TRACED } from "../../shared/words/line-state.ts";
import { HOSTILE_LINE, hostileExport, written } from "../helpers/exported-line.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";

const NAMES = FILE_FORMATS.map(({ as }) => as);
const line = HOSTILE_LINE;
const over = line.checks.find(({ finding }) => finding.kind === "over-limit")!;

/** The words of a file: for DXF its texts, for others all of it; markup, escapes and breaks of lines taken out. */
function wordsIn(text: string, as: string): string {
  const words = as === "dxf" ? textsOf(text).join(" ") : text;
  return words
    .replace(/\\U\+([0-9A-F]{4})/g, (_, hex: string) =>
      String.fromCharCode(Number.parseInt(hex, 16)),
    )
    .replace(/&amp;/g, "&")
    .replace(/&lt;br&gt;|<br>/g, " ")
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/\s+/g, " ");
}

/** Values of group code 1 in a DXF file: its texts. A code and its value stand on a line each. */
function textsOf(dxf: string): string[] {
  const lines = dxf.split("\n");
  return lines.filter((_, i) => i % 2 === 1 && lines[i - 1]!.trim() === "1");
}

describe.each(NAMES)("a line with something to fix, as %s", (as) => {
  it.each(["us", "metric"] as const)(
    "says what must be fixed, the datum, the settling and the cautions in %s units",
    async (system) => {
      const text = wordsIn(await written(as, hostileExport(system)), as);
      const { what } = checkWords(over, system);
      expect(text).toContain(what.slice(1));
      expect(text).toContain("NAVD 88");
      expect(text).toContain(LEAVE_NOT_SET);
      for (const { short } of CAUTIONS) expect(text).toContain(short);
      const unit = system === "us" ? "ft" : "m";
      expect(text).toMatch(new RegExp(`lay.bags.to.*\\b${unit}\\b|lay_bags_to_${unit}`));
    },
  );

  it("gives nothing that has no elevation data as a figure", async () => {
    const text = await written(as, hostileExport("metric"));
    expect(text).not.toMatch(/NaN|undefined|Infinity|\bnull,null/);
    expect(line.stations.some(({ groundM }) => groundM === null)).toBe(true);
  });

  it("has no word that the trade does not use and no figure of the other units", async () => {
    for (const system of ["us", "metric"] as const) {
      const text = wordsIn(await written(as, hostileExport(system)), as);
      expect(text).not.toMatch(NEVER);
      expect(text).not.toMatch(FOREIGN[system]);
    }
  });
});

describe.each(["gpx", "kml", "dxf"] as const)("every stake as %s", (as) => {
  it("stands with its name, and with what must be fixed on its line where a receiver shows one alone", async () => {
    const text = await written(as, hostileExport("us"));
    const stakes = text.match(/A \d+\+\d\d\b/g)!;
    expect(new Set(stakes).size).toBe(line.stations.length);
    if (as === "dxf") return;
    const lead = mustFixLead(
      line.checks.filter(({ severity, continued }) => severity === "stop" && !continued).length,
    );
    expect(text.split(lead).length - 1).toBeGreaterThan(line.stations.length);
  });
});

describe("the grid of a drawing", () => {
  const on = (grid: Awaited<ReturnType<ToGrid>>) =>
    written("dxf", hostileExport("us"), async () => grid);
  const places = (unitM: number | null) => ({
    ...{ crs: "EPSG:1", unitM },
    xy: Array.from({ length: 20_000 }, () => [1, 2] as const),
  });

  it.each([
    [1, 6, "meters"],
    [FOOT_M, 2, "international feet"],
    [1200 / 3937, 21, "US survey feet"],
  ])("in units of %f m has $INSUNITS %i and says %s", async (unitM, code, words) => {
    const text = await on(places(unitM));
    expect(text).toMatch(new RegExp(`\\$INSUNITS\\n70\\n${code}\\n`));
    expect(wordsIn(text, "dxf")).toContain(
      `Grid: EPSG:1. Coordinates and elevations are in ${words}`,
    );
  });

  it("in degrees gives way to the UTM zone of the place, and says so", async () => {
    const text = wordsIn(await on(places(null)), "dxf");
    expect(text).toContain(
      "WGS 84 / UTM zone 14N (EPSG:32614), because the elevation data is in degrees",
    );
  });

  it("in another unit is refused with what to do", async () => {
    await expect(on(places(20.1168))).rejects.toMatchObject({
      failure: { code: "export/grid-unit", given: { unitM: 20.1168 } },
    });
  });
});

describe("a line whose water was not traced", () => {
  it.each(NAMES)("says so in %s, and one that was traced does not", async (as) => {
    const exported = hostileExport("us");
    const untraced = await written(as, { ...exported, isTraced: false });
    expect(wordsIn(untraced, as)).toContain(NOT_TRACED);
    expect(wordsIn(await written(as, exported), as)).not.toContain(NOT_TRACED);
  });
});

describe("text in XML", () => {
  it("holds no sign of markup and no character that XML 1.0 does not have, whatever it was", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const xml = escaped(text);
        expect(xml).not.toMatch(/[<>"']|&(?!(?:amp|lt|gt|quot|apos|#13);)/);
        const isHeld = (sign: string) => sign >= " " || "\t\n\r".includes(sign);
        expect([...xml].every(isHeld)).toBe(true);
        expect(xml).not.toMatch(/\p{Cs}|[\ufffe\uffff]/u);
      }),
      { seed: 10, numRuns: 300 },
    );
    expect(escaped("Müller 北 🌊")).toBe("Müller 北 🌊");
  });
});
