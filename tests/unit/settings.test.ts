import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { documentsIn } from "../../shared/handbook.ts";
import { formatSetting, parseSetting } from "../../shared/setting-text.ts";
import { SETTINGS, type Setting, type SettingPath } from "../../shared/settings.ts";
import { said } from "../helpers/said.ts";

const PARTS = ["water", "ground", "section", "practice", "holding", "time"] as const;
const PATHS = Object.keys(SETTINGS) as SettingPath[];
/** Empty in a new plan: nothing stands for what only the person can say. */
const NOT_ENTERED: readonly SettingPath[] = [
  ...(["water.datumOffsetM", "ground.rmseM", "practice.people", "time.shifts"] as const),
  ...(["time.dayFromH", "time.dayToH"] as const),
];
const at = (path: SettingPath): Setting => SETTINGS[path];

function numbersIn(value: unknown, path: string): string[] {
  if (typeof value === "number") return [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

describe("every adjustable number", () => {
  it("is in the list, with the default that an empty plan has", () => {
    const adjustable = PARTS.flatMap((part) => numbersIn(EMPTY_PLAN[part], part));
    expect([...adjustable, ...NOT_ENTERED].sort()).toEqual([...PATHS].sort());
    for (const path of adjustable) {
      const inPlan = path
        .split(".")
        .reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], EMPTY_PLAN);
      expect(at(path as SettingPath).defaultSI).toBe(inPlan);
    }
  });

  it.each(PATHS)("%s has a range round its default and a source", (path) => {
    const { defaultSI, lowSI, highSI, source } = at(path);
    expect(defaultSI).toBeGreaterThanOrEqual(lowSI);
    expect(defaultSI).toBeLessThanOrEqual(highSI);
    expect(source).not.toBe("");
    const isSourced = documentsIn(source).length > 0;
    expect(isSourced || /no source|from memory|judgement/.test(source)).toBe(true);
  });

  it.each(PATHS)("%s reads back what is shown, in both systems", (path) => {
    const { kind, defaultSI } = at(path);
    for (const system of ["us", "metric"] as const) {
      const text = formatSetting(kind, defaultSI, system);
      const read = parseSetting(path, text, system);
      expect(read.ok && formatSetting(kind, read.value, system)).toBe(text);
    }
  });

  it.each(PATHS)("%s refuses junk and what is out of range with the range", (path) => {
    const { kind, highSI } = at(path);
    const beyond = formatSetting(kind, highSI * 1.5 + 1, "metric");
    for (const text of ["junk", "", beyond]) {
      const read = parseSetting(path, text, "metric");
      expect(read.ok).toBe(false);
      if (read.ok) continue;
      expect(said(read.failure, "metric").message).toContain(formatSetting(kind, highSI, "metric"));
    }
  });
});

describe("units of settings", () => {
  it.each([
    ["section.bag.placedVolumeM3", "0.28 cu ft", 0.28 * 0.3048 ** 3],
    ["section.bag.placedVolumeM3", "6 L", 0.006],
    ["section.bag.filledMassKg", "40 lb", 18.1436948],
    ["section.bag.filledMassKg", "14 kg", 14],
    ["section.bag.placedWidthM", "14", 14 * 0.0254],
    ["section.bag.placedWidthM", "30 cm", 0.3],
    ["section.baseRatio", "3:1", 3],
    ["practice.spareShare", "7.5", 0.075],
    ["practice.sandDryKgPerM3", "95 pcf", 95 * (0.45359237 / 0.3048 ** 3)],
    ["practice.truckM3", "3", 3 * 0.764554857984],
    ["practice.sheetAnchorM3PerM", "2 cu yd / 100 ft", (2 * 0.764554857984) / 30.48],
    ["water.fallPerM", "2 ft/mi", 2 / 5280],
    ["water.fallPerM", "0.4 m/km", 0.0004],
    ["water.stageM", `-1' 6"`, -0.4572],
    ["holding.fillHighMPerS", "0.1 cm/s", 0.001],
    ["holding.fillHighMPerS", "86.4 m/day", 0.001],
    ["holding.rainMPerS", "2 in/h", 0.0508 / 3600],
    ["holding.rainMPerS", "36 mm/h", 1e-5],
    ["time.setUpH", "90 min", 1.5],
    ["time.dayFromH", "06:30", 6.5],
    ["time.dayToH", "21", 21],
  ] as const)("%s takes %s", (path, text, expected) => {
    const read = parseSetting(path, text, "us");
    expect(read.ok && read.value).toBeCloseTo(expected, 9);
  });

  it("takes whole people only", () => {
    expect(parseSetting("practice.people", "12.5", "us").ok).toBe(false);
    expect(parseSetting("practice.people", "1,200", "us")).toEqual({ ok: true, value: 1200 });
  });
});
