import { describe, expect, it } from "vitest";
import type { CheckFinding } from "../../shared/checks/findings.ts";
import { RULES } from "../../shared/checks.ts";
import { TRACE_RULE_IDS } from "../../shared/checks-trace.ts";
import { DEFAULT_WATER } from "../../shared/defaults.ts";
import type { LevelDoubt } from "../../shared/level-doubt.ts";
import type { LeaveLevel } from "../../shared/plan.ts";
import type { SearchNote } from "../../shared/search-types.ts";
import { SECTIONS } from "../../shared/sections.ts";
import { SETTINGS, type SettingPath } from "../../shared/settings.ts";
import type { Check } from "../../shared/sizing-types.ts";
import type { TimeVerdict } from "../../shared/time/time-verdict.ts";
import type { AheadVerdict } from "../../shared/time/types.ts";
import type { OverallVerdict } from "../../shared/verdict.ts";
import { bagOrderParts } from "../../shared/words/bag-order.ts";
import { CAUTIONS, DISCLAIMER, PATROL, watchSigns } from "../../shared/words/cautions.ts";
import type { FindingOf } from "../../shared/words/checks/text.ts";
import { checkWords, ruleWords } from "../../shared/words/checks.ts";
import { gaugeSumWords } from "../../shared/words/gauge-sum.ts";
import { leaveWords } from "../../shared/words/leave.ts";
import { leveeTypeText } from "../../shared/words/levee-types.ts";
import { howGoodWords, searchNoteWords } from "../../shared/words/search.ts";
import { figureNote, settingNote } from "../../shared/words/setting-notes.ts";
import { timeVerdictWords } from "../../shared/words/time-verdict.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { headlineWords, noneFoundWords, overallVerdictWords } from "../../shared/words/verdict.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";

const SYSTEMS = ["us", "metric"] as const;
const FITS = [{ typeId: "plywood-box", baseM: 2 }];
const DOUBT: LevelDoubt = {
  ...{ kind: "far-below", waterM: 81.2, apartM: 180, lowestGroundM: 264, highestGroundM: 266 },
  ...{ causes: ["unit", "gauge-zero", "datum"], countsUnknown: true },
};
const PLACE = { chainageM: 120, roundEnd: true, besideM: 12, groundM: 265.4 };
const WAYS = {
  people: 83,
  peopleAtLeast: 72,
  peopleWithHold: 90,
  peopleDayAndNight: 40,
  bagsAtMost: 13_900,
};

const CLOSURE = {
  ...{ fromM: 10, toM: 16, bags: 400, people: 10, stageM: 9.1, at: "2026-04-08T11:00-05:00" },
  ...{ closeH: 20, takesSlowH: 1, takesFastH: 0.7, neededM: 265.3, neededH: 30, earlyH: 9 },
};

/** One or more findings of every kind there is; a kind without one does not compile. */
const FOUND: {
  readonly [K in CheckFinding["kind"]]: readonly FindingOf<K>[];
} = {
  "over-limit": [true, false].map((doubtsData) => ({
    ...{ kind: "over-limit", heightM: 1.53, limitM: 1.22, lengthM: 18, doubtsData },
  })),
  "culverts-possible": [1, 3].map((count) => ({
    ...{ kind: "culverts-possible", count, bankM: 1.8, sagDepthM: 0.6 },
  })),
  "reached-if-culvert": [{ kind: "reached-if-culvert", reaches: ["House", "Barn"] }],
  "let-in-if-culvert": [true, false].map((isWet) => ({
    ...{ kind: "let-in-if-culvert", isWet, reaches: isWet ? ["House"] : [] },
    ...{ elevationM: 265.3, stageM: isWet ? null : 9.3 },
  })),
  "culvert-to-look-for": [{ kind: "culvert-to-look-for", place: "Possible culvert 1" }],
  "bond-trench": [{ kind: "bond-trench", overM: 0.9144, lengthM: 40 }],
  "raise-over-limit": [{ kind: "raise-over-limit", raiseM: 0.3, limitM: 1.22, raisedHeightM: 1.4 }],
  "raise-too-narrow": [
    {
      ...{ kind: "raise-too-narrow", raiseM: 0.3, carriesM: 0.9, raisedHeightM: 1.2 },
      leastBaseRatio: 2,
    },
  ],
  "leave-not-set": [{ kind: "leave-not-set" }],
  "leave-above-sized": [{ kind: "leave-above-sized", aboveM: 0.3 }],
  "ground-reading": [0.5, -0.5].map((differenceM) => ({
    ...{ kind: "ground-reading", differenceM, count: 2, of: 9, accuracyM: 0.1 },
  })),
  freeboard: [{ kind: "freeboard", freeboardM: 0.1, leastM: 0.3048 }],
  datum: [
    { kind: "datum", of: "gauge-zero" },
    { kind: "datum", of: "water-elevation" },
  ],
  "fall-direction": [{ kind: "fall-direction" }],
  "water-level": [
    { kind: "water-level", doubt: DOUBT },
    { kind: "water-level", doubt: { ...DOUBT, kind: "far-above" } },
    { kind: "water-level", doubt: { ...DOUBT, kind: "none-below", countsUnknown: false } },
  ],
  "heavy-bag": [{ kind: "heavy-bag", filledMassKg: 25, overKg: 22.7 }],
  "bag-density": [{ kind: "bag-density", kgPerM3: 3000 }],
  "narrow-base": [{ kind: "narrow-base", baseRatio: 1.5 }],
  "incomplete-totals": [40, 140].map((lengthNoDataM) => ({
    ...{ kind: "incomplete-totals", bags: 9608, lengthM: 140, lengthNoDataM },
  })),
  carpentry: [{ kind: "carpentry" }],
  "no-ground": [{ kind: "no-ground", lengthM: 30 }],
  "open-toe": [{ kind: "open-toe" }],
  "cross-slope": [{ kind: "cross-slope", fallM: 0.6, heightM: 1 }],
  "narrow-low": [{ kind: "narrow-low", widthM: 2, depthM: 0.15 }],
  "narrow-lows": [{ kind: "narrow-lows", count: 7, stationIntervalM: 15.24 }],
  "coarse-raster": [{ kind: "coarse-raster", cellM: 10 }],
  "close-bank": [{ kind: "close-bank", aboveM: 0.05, rmseM: 0.1, lengthM: 12 }],
  "close-end": [{ kind: "close-end", aboveM: 0.05, rmseM: 0.1, lengthM: 0 }],
  "tie-in": [true, false].map((belowWater) => ({
    ...{ kind: "tie-in", endM: 0, groundM: 265, belowTopM: 0.4, belowWater },
  })),
  "crosses-itself": [{ kind: "crosses-itself", firstM: 20, secondM: 90 }],
  "overlaps-building": [
    { kind: "overlaps-building", building: "House", setbackM: 2.4, fits: FITS },
    { kind: "overlaps-building", building: "House", setbackM: 2.4, fits: [] },
  ],
  setback: [{ kind: "setback", building: "House", roomM: 1, setbackM: 2.4, fits: FITS }],
  "kept-setback": [{ kind: "kept-setback", madeWithM: 0.9, planM: 2.4 }],
  "no-go": [{ kind: "no-go", area: "Garden" }],
  "over-footprint": [{ kind: "over-footprint", building: "14 River Ln" }],
  "no-building": [{ kind: "no-building" }],
  "ring-cuts": [{ kind: "ring-cuts", building: "House" }],
  "left-outside": [{ kind: "left-outside", building: "Shed" }],
  outside: [{ kind: "outside", building: "House" }],
  "inside-unprotected": [{ kind: "inside-unprotected", building: "Shed" }],
  "bases-overlap": [{ kind: "bases-overlap", otherM: 12, lengthM: 30, fits: FITS }],
  "type-limit": SECTIONS.map(({ id: typeId }) => ({
    ...{ kind: "type-limit", typeId, heightM: 1.3, limitM: 0.9, lengthM: 20 },
  })),
  "type-cautions": SECTIONS.slice(1).map(({ id: typeId }) => ({
    ...{ kind: "type-cautions", typeId, reachesM: [[0, 30]] },
  })),
  "types-meet": [{ kind: "types-meet", beforeId: "pyramid", afterId: "plywood-box" }],
  "bracing-not-calculated": [
    { kind: "bracing-not-calculated", typeId: "braced-wall", lengthM: 30 },
  ],
  sliding: [
    {
      ...{ kind: "sliding", waterDepthM: 0.9, required: 1.5, lengthM: 40 },
      ...{ factor: { low: 1.2, high: 2 }, friction: { low: 0.3, high: 0.5 } },
    },
  ],
  overturning: [{ kind: "overturning", waterDepthM: 0.9, factor: 1.3, required: 1.5, lengthM: 40 }],
  "exit-gradient": (["light", "medium", "heavy", "boils", "new-boils"] as const).map((seen) => ({
    ...{ kind: "exit-gradient", soil: "fine-sand", gradient: { low: 0.4, high: 0.9 }, seen },
  })),
  creep: [
    {
      ...{ kind: "creep", soil: "unknown", lane: 3, bligh: 6 },
      ...{ laneRequired: null, blighRequired: null },
    },
    {
      ...{ kind: "creep", soil: "fine-sand", lane: 3, bligh: 6 },
      ...{ laneRequired: 7, blighRequired: 15 },
    },
  ],
  pumps: (["sump", "diaphragm", "centrifugal", "trash"] as const).map((pump) => ({
    ...{ kind: "pumps", demandM3PerS: { low: 0.003, high: 0.01 }, capacityM3PerS: 0.015, pump },
    ...{ working: 2, spare: 1, sumpM: 265, notCounted: ["rain", "seepage", "joints"] },
  })),
  "pump-failure": [{ kind: "pump-failure", excessM3PerS: 0.004, hours: 1.2 }],
  "inside-holes": [{ kind: "inside-holes", share: 0.2 }],
  "crew-not-entered": [{ kind: "crew-not-entered", bags: 14_276, missing: ["people", "shifts"] }],
  "no-forecast": [{ kind: "no-forecast", bags: 14_276, fastH: 12, slowH: 27 }],
  "forecast-over": [{ kind: "forecast-over", bags: 14_276, fastH: null, slowH: null }],
  "over-a-year": [{ kind: "over-a-year", bags: 14_276, people: 1 }],
  "ends-after-forecast": [{ kind: "ends-after-forecast", slowH: 60, forecastEndH: 48 }],
  late: (["likely", "slow-pace", "high-forecast"] as const).flatMap((by) =>
    ([null, { of: "bags", bags: 13_900 }, { of: "share", share: 0.4 }] as const).map(
      (mostWork) => ({
        ...{ kind: "late", by, startAt: "2026-04-03T14:00-05:00", behindFromH: 18, behindAtM: 40 },
        ...{ marginM: 0.15, shortM: 0.2, waysOut: mostWork && WAYS, mostWork },
      }),
    ),
  ),
  "forecast-crest": [{ kind: "forecast-crest", crestM: 266, sizedForM: 265.5, riseM: 0.5 }],
  "forecast-below-ground": [{ kind: "forecast-below-ground", crestM: 260, belowM: 5 }],
  "high-forecast": [{ kind: "high-forecast", crestM: 267, overTopM: 0.3 }],
  "forecast-zero": [
    { kind: "forecast-zero", gaugeZeroM: 256 },
    { kind: "forecast-zero", gaugeZeroM: null },
  ],
  "water-gets-in": (["ring", "line"] as const).map((line) => ({
    ...{ kind: "water-gets-in", place: PLACE, reaches: "House", through: [], line },
  })),
  "culvert-open": ([null, "none", "flap", "gate"] as const).map((gate) => ({
    ...{ kind: "culvert-open", pipeId: "c", culvert: "North road", gate },
    ...(gate === null ? { sizeM: null, invertM: null } : { sizeM: 0.6, invertM: 264.2 }),
  })),
  "culvert-plugged": [{ kind: "culvert-plugged", culvert: "North road" }],
  "culvert-above": [{ kind: "culvert-above", culvert: "North road", aboveM: 0.4 }],
  "drain-open": (["floor-drain", "storm-inlet", "sewer"] as const).map((type) => ({
    ...{ kind: "drain-open", pipeId: "d", drain: "Laundry", type },
  })),
  "drain-not-known": (["floor-drain", "storm-inlet", "sewer"] as const).map((type) => ({
    ...{ kind: "drain-not-known", pipeId: "d", drain: "Laundry", type },
  })),
  "drain-plugged": [{ kind: "drain-plugged", drain: "Laundry", type: "floor-drain" }],
  closure: [{ kind: "closure", ...CLOSURE, inTime: true }],
  "closure-late": [null, -2].map((earlyH) => ({
    ...{ kind: "closure-late", ...CLOSURE, earlyH, inTime: false },
  })),
  "closure-not-known": (["when", "people", "forecast"] as const).map((missing) => ({
    ...{ kind: "closure-not-known", bags: 400, missing },
  })),
  "road-floods": [
    { leavesBefore: null, fromStart: false },
    { leavesBefore: true, fromStart: false },
    { leavesBefore: false, fromStart: false },
    { leavesBefore: true, fromStart: true },
  ].map((leaves) => ({
    ...{ kind: "road-floods", road: "Mill road", elevationM: 265.2, ...leaves },
    ...(leaves.leavesBefore === null
      ? { stageM: null, hour: null }
      : { stageM: 9.1, hour: "2026-04-08T08:00-05:00" }),
  })),
  "road-not-known": [{ kind: "road-not-known", road: "Mill road" }],
  "let-in-by-pipe": [true, false].map((isKnown) => ({
    ...{ kind: "let-in-by-pipe", reaches: isKnown ? ["House"] : [], isKnown },
    pipes: [{ pipeId: "c", name: "North road", kind: "culvert" }],
  })),
  "reached-by-pipe": [true, false].map((isKnown) => ({
    ...{ kind: "reached-by-pipe", reaches: ["House", "Barn"], isKnown },
    pipes: [
      { pipeId: "c", name: "North road", kind: "culvert" },
      { pipeId: "d", name: "Laundry", kind: "floor-drain" },
    ],
  })),
  "hole-decides": [{ kind: "hole-decides", reaches: null }],
  "hole-may-be-lower": [{ kind: "hole-may-be-lower", reaches: "House" }],
  overtops: (["top", "ground"] as const).map((over) => ({
    ...{ kind: "overtops", stageM: 9.75, elevationM: 266.4, aboveSizedForM: 0.3, over },
    ...{ place: PLACE, early: over === "ground", line: "line" },
  })),
  "building-wet": [true, false].map((leftByChoice) => ({
    ...{ kind: "building-wet", building: "Shed", depthM: 0.4, leftByChoice },
  })),
  "if-it-fails": [{ kind: "if-it-fails", building: "House", depthM: 0.4 }],
  "source-inside": [{ kind: "source-inside", source: "River" }],
  "crosses-water": [{ kind: "crosses-water", lengthM: 20 }],
  "not-reached": [
    { kind: "not-reached", building: "House", sillM: 266, marginM: 0.05, rmseM: 0.1 },
  ],
  "building-off-data": [{ kind: "building-off-data", building: "House" }],
  "source-above-water": [{ kind: "source-above-water", source: "River", groundM: 270 }],
  "source-off-data": [{ kind: "source-off-data", source: "River" }],
  "no-water": [{ kind: "no-water", waterM: 240 }],
  "low-unconnected": [{ kind: "low-unconnected", areaM2: 4000 }],
  "hole-reached": [{ kind: "hole-reached", holeCells: 400, throughHoleCells: 560, cells: 835 }],
  "coarse-trace": [true, false].map((resolvesLines) => ({
    ...{ kind: "coarse-trace", cellM: 4, resolvesLines },
  })),
};

const NOTES: readonly SearchNote[] = [
  ...(
    [
      ...(["cut-short", "improve-cut-short", "over-limit", "not-judged"] as const),
      ...(["nothing-to-build", "part-on-high-ground"] as const),
    ] as const
  ).map((kind) => ({ kind })),
  { kind: "groups-not-compared", most: 5 },
  { kind: "toe-too-close", byM: 0.4 },
  { kind: "no-data", lengthM: 12 },
  { kind: "separate-rings", count: 2 },
  { kind: "rules-broken", wasBrokenBefore: true },
  { kind: "rules-broken", wasBrokenBefore: false },
];

const CLOSING = { at: "stretch", fromM: 120, toM: 12, overClosing: true } as const;
const PLACES = [
  null,
  { at: "whole-line" },
  { at: "station", chainageM: 125 },
  CLOSING,
  { at: "stretches", count: 6, isRest: true, lengthM: 72, worst: CLOSING },
] as const;

const BEHIND: AheadVerdict = {
  ...{ band: "likely", pace: "slow", ahead: false },
  ...{ leastSpareM: -0.2, behindFromH: 18, behindAtM: 40 },
};
const TIMES: readonly TimeVerdict[] = [
  ...[{ kind: "in-time" } as const, { kind: "over-a-year" } as const],
  ...(["late", "late-slow", "late-if-high"] as const).map((kind) => ({ kind, behind: BEHIND })),
  { kind: "too-low", riseM: 0.3 },
  ...(
    [
      "counting",
      "no-forecast",
      "no-gauge-zero",
      "forecast-over",
      "forecast-ends",
      "no-data",
    ] as const
  ).map((because) => ({ kind: "not-known", because }) as const),
  { kind: "not-known", because: "doubt", doubt: DOUBT },
  { kind: "not-known", because: "no-crew", missing: ["startAt"] },
];
const VERDICT: OverallVerdict = {
  ...{ notKnown: null, mustFix: 3, otherMustFix: 2, overLimitM: 9, gapM: 12, getsIn: true },
  ...{ time: { kind: "in-time" }, first: null },
};
const LEAVES: readonly (LeaveLevel | null)[] = [
  null,
  { by: "stage", levelM: 9, at: "2026-04-08T11:00", note: "" },
  { by: "elevation", levelM: 266, at: null, note: "" },
];

function checkOf(finding: CheckFinding, where: Check["where"]): Check {
  const place = { fromM: 0, toM: 1, at: null };
  return { id: RULES[0]!.id, severity: "stop", finding, where, ...place };
}

describe.each(SYSTEMS)("every sentence in %s units", (system) => {
  const units = unitsOf(system);
  const said = Object.values(FOUND).flatMap((each) =>
    each.flatMap((finding: CheckFinding) =>
      PLACES.map((where) => checkWords({ id: RULES[0]!.id, where, finding }, system)),
    ),
  );
  const headlines = Object.values(FOUND).flatMap((each) =>
    each.flatMap((finding: CheckFinding) =>
      PLACES.map((where) => headlineWords(checkOf(finding, where), system)!),
    ),
  );
  const sentences = [
    ...said.flatMap(({ message, remedy, source }) => [message, remedy, source]),
    ...[...RULES.map(({ id }) => id), ...TRACE_RULE_IDS].flatMap((id) =>
      Object.values(ruleWords(id, system)),
    ),
    ...SECTIONS.flatMap(({ id }) => {
      const { name, about, limit, cautions } = leveeTypeText(id, units);
      return [name, about, limit.note, ...cautions];
    }),
    ...[...CAUTIONS, ...PATROL].map(({ text }) => text),
    ...watchSigns(system).flatMap(({ sign, act }) => [sign, act]),
    ...(Object.keys(SETTINGS) as SettingPath[]).map((path) => settingNote(path, units) ?? ""),
    ...SECTIONS.flatMap(({ id, figures }) =>
      figures.map(({ key }) => figureNote(id, key, units) ?? ""),
    ),
    ...NOTES.map((note) => searchNoteWords(note, units)),
    ...headlines.flatMap(({ headline, remedy }) => [headline, remedy]),
    ...TIMES.map((verdict) => timeVerdictWords(verdict, system)),
    ...TIMES.map((time) => overallVerdictWords({ ...VERDICT, time }, system)),
    ...[false, null].flatMap((getsIn) => Object.values(noneFoundWords({ getsIn }))),
    ...LEAVES.map((leave) => leaveWords({ leave }, system)),
    bagOrderParts({ total: 19_309, placed: 17_028, spare: 851, onPolySheeting: 1430 }),
    gaugeSumWords({ ...DEFAULT_WATER, by: "stage", stageM: 8.5, gaugeZeroM: 8 }, "", system)!,
    ...(["estimate", "proof"] as const).map((kind) => howGoodWords({ kind, gapShare: 0.04 })),
    DISCLAIMER,
  ];

  it("of a check is whole: it ends, says what to do, and has every figure", () => {
    for (const { message, remedy } of said) {
      expect(message).toMatch(/^\S.*[.)]$/);
      expect(remedy).toMatch(/^\S.*\.$/);
      expect(`${message} ${remedy}`).not.toMatch(/NaN|undefined|Infinity|null|object|–/);
      expect(message).not.toMatch(/-{2,}\d|\s{2,}/);
    }
  });

  it("of what is first to fix has every figure, and ends what to do", () => {
    for (const { headline, remedy } of headlines) {
      expect(headline).toMatch(/^\S.*\S$/);
      expect(remedy).toMatch(/^\S.*\.$/);
      expect(`${headline} ${remedy}`).not.toMatch(/NaN|undefined|Infinity|null|object|–/);
    }
  });

  it("has figures of these units alone", () => {
    for (const sentence of sentences) expect(sentence).not.toMatch(FOREIGN[system]);
  });

  it("has no word that the trade does not use, and promises nothing", () => {
    for (const sentence of sentences) expect(sentence).not.toMatch(NEVER);
  });
});

it("a name is said as it was typed, whatever figures are in it", () => {
  const building = "Shed 12 ft (3.66 m)";
  const where = { at: "station", chainageM: 100 } as const;
  const finding = { kind: "setback", building, roomM: 1, setbackM: 2, fits: [] } as const;
  for (const system of SYSTEMS) {
    const { message } = checkWords({ id: "setback", where, finding }, system);
    expect(message).toContain(`of "${building}";`);
  }
});
