import { describe, expect, it } from "vitest";
import {
  areaIn,
  formatArea,
  formatCount,
  formatElevation,
  formatHours,
  formatLength,
  formatMass,
  formatShare,
  formatSmallMass,
  formatSmallVolume,
  formatStation,
  formatVolume,
  grouped,
  lengthFrom,
  lengthIn,
  lengthUnit,
  parseLength,
  parseStation,
  volumeIn,
} from "../../shared/units.ts";
import { said } from "../helpers/said.ts";

const metres = (text: string, system: "us" | "metric" = "us") => {
  const read = parseLength(text, system);
  return read.ok ? read.value : null;
};

describe("a typed length", () => {
  it.each([
    ["3.5 ft", 3.5 * 0.3048],
    ["3.5ft", 3.5 * 0.3048],
    ["3.5'", 3.5 * 0.3048],
    ["3.5 feet", 3.5 * 0.3048],
    [`3'6"`, 3.5 * 0.3048],
    [`3' 6"`, 3.5 * 0.3048],
    ["3'6", 3.5 * 0.3048],
    [`3'-6"`, 3.5 * 0.3048],
    ["3 ft 6 in", 3.5 * 0.3048],
    ["3′ 6″", 3.5 * 0.3048],
    ["3’ 6”", 3.5 * 0.3048],
    [`3' 6 1/2"`, (3 + 6.5 / 12) * 0.3048],
    ["3' 6½\"", (3 + 6.5 / 12) * 0.3048],
    ["1/2 in", 0.0127],
    ["42 in", 42 * 0.0254],
    [`42"`, 42 * 0.0254],
    ["42''", 42 * 0.0254],
    ["1.07 m", 1.07],
    ["1.07 metres", 1.07],
    ["107 cm", 1.07],
    ["1070 mm", 1.07],
    ["1.2 km", 1200],
    ["10 yd", 9.144],
    ["1,250 ft", 381],
    ["12,345.5 ft", 12345.5 * 0.3048],
    ["-2 ft", -0.6096],
    ["−2 ft", -0.6096],
    ["+2 ft", 0.6096],
    [`-3'6"`, -3.5 * 0.3048],
    ["  3.5   FT ", 3.5 * 0.3048],
    [".5 m", 0.5],
  ])("reads %s", (text, expected) => {
    expect(metres(text)).toBeCloseTo(expected, 9);
  });

  it("takes a bare number in the person's unit", () => {
    expect(metres("3", "us")).toBeCloseTo(0.9144, 12);
    expect(metres("3", "metric")).toBe(3);
  });

  it.each([
    "",
    "   ",
    "ft",
    "three feet",
    "5 fathoms",
    "3,5",
    "1,25 ft",
    "1e3",
    "0x10",
    "Infinity",
    "NaN",
    `3'14"`,
    "1/0 ft",
    "3 ft 6 cm",
    "3 6",
    "--3",
    "3 ft; drop",
    "3 constructor",
    "3 __proto__",
  ])("refuses %j, saying what was expected and what came", (text) => {
    const read = parseLength(text, "us");
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.failure.code).toBe("length/unreadable");
    expect(said(read.failure).message).toContain("3.5 ft");
    expect(said(read.failure).message).toContain(
      text.trim() === "" ? "nothing was typed" : text.trim(),
    );
    expect(said(read.failure).remedy).not.toBe("");
  });

  it("hints at the decimal point when a comma came", () => {
    const read = parseLength("3,5", "metric");
    expect(read.ok ? "" : said(read.failure).remedy).toContain("decimals with a point");
  });

  it("shortens what came when it is long", () => {
    const read = parseLength("x".repeat(5000), "us");
    expect(read.ok ? 0 : said(read.failure).message.length).toBeLessThan(200);
  });
});

describe("a typed station", () => {
  it.each([
    ["12+50", "us", 1250 * 0.3048],
    ["12 + 50", "us", 1250 * 0.3048],
    ["1+250.0", "metric", 1250],
    ["0+00", "us", 0],
    ["125 ft", "metric", 38.1],
    ["40", "us", 40 * 0.3048],
  ] as const)("reads %s in %s", (text, system, expected) => {
    const read = parseStation(text, system);
    expect(read.ok && read.value).toBeCloseTo(expected, 9);
  });

  it.each(["12+100", "12+", "1+2+3", "-5 ft", "-1+50", "station"])("refuses %s", (text) => {
    const read = parseStation(text, "us");
    expect(read.ok ? "" : read.failure.code).toBe("station/unreadable");
  });

  it("refuses a plus part of a full station or more and says so", () => {
    const read = parseStation("1+1000", "metric");
    expect(read.ok ? "" : said(read.failure).remedy).toContain("below 1000");
  });

  it("reads back what it writes", () => {
    for (const chainageM of [0, 0.01, 12.34, 99.99, 381, 999.99, 1234.56]) {
      for (const system of ["us", "metric"] as const) {
        const read = parseStation(formatStation(chainageM, system, 3), system);
        expect(read.ok && Math.abs(read.value - chainageM)).toBeLessThan(0.0006);
      }
    }
  });
});

describe("figures as people read them", () => {
  it("writes lengths and elevations with their unit", () => {
    expect(formatLength(1.0668, "us")).toBe("3.5 ft");
    expect(formatLength(1.07, "metric")).toBe("1.07 m");
    expect(formatLength(381, "us", 0)).toBe("1,250 ft");
    expect(formatElevation(266.36, "us")).toBe("873.88 ft");
    expect(formatElevation(266.36, "metric")).toBe("266.36 m");
    expect(formatElevation(-0.001, "metric")).toBe("0.00 m");
  });

  it("carries a rounded-up station into the next one", () => {
    expect(formatStation(99.6 * 0.3048, "us")).toBe("1+00");
    expect(formatStation(999.97, "metric")).toBe("1+000.0");
  });

  it("writes quantities with thousands commas and no false decimals", () => {
    expect(formatCount(12340)).toBe("12,340");
    expect(formatCount(1234567)).toBe("1,234,567");
    expect(formatCount(999)).toBe("999");
    expect(formatVolume(125, "us")).toBe("163 cu yd");
    expect(formatVolume(125, "metric")).toBe("125 m³");
    expect(formatVolume(1.26, "metric")).toBe("1.3 m³");
    expect(formatVolume(9.96, "metric")).toBe("10 m³");
    expect(formatArea(111.48, "us")).toBe("1,200 sq ft");
    expect(formatArea(111.48, "metric")).toBe("111 m²");
    expect(formatMass(240_400, "us")).toBe("265 tons");
    expect(formatMass(240_400, "metric")).toBe("240 t");
    expect(formatSmallMass(16.33, "us")).toBe("36 lb");
    expect(formatSmallMass(16.33, "metric")).toBe("16.3 kg");
    expect(formatSmallVolume(0.009203, "us")).toBe("0.325 cu ft");
    expect(formatSmallVolume(0.009203, "metric")).toBe("9.2 L");
    expect(formatHours(10.84)).toBe("10.8 h");
    expect(formatHours(240.4)).toBe("240 h");
    expect(formatShare(0.1)).toBe("10 %");
    expect(formatShare(0.075)).toBe("7.5 %");
    expect(grouped(-1234.56, 1)).toBe("-1,234.6");
  });

  it("never writes a number for what is not known", () => {
    for (const unknown of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(formatLength(unknown, "us")).toBe("–");
      expect(formatStation(unknown, "metric")).toBe("–");
      expect(formatCount(unknown)).toBe("–");
      expect(formatVolume(unknown, "us")).toBe("–");
      expect(formatMass(unknown, "us")).toBe("–");
      expect(formatHours(unknown)).toBe("–");
    }
  });

  it("turns SI into axis units and back", () => {
    expect(lengthIn(0.3048, "us")).toBe(1);
    expect(lengthFrom(1, "us")).toBe(0.3048);
    expect(lengthIn(2, "metric")).toBe(2);
    expect(lengthUnit("us")).toBe("ft");
    expect(areaIn(0.09290304, "us")).toBeCloseTo(1, 12);
    expect(volumeIn(0.764554857984, "us")).toBeCloseTo(1, 12);
  });
});
