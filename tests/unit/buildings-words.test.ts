import { describe, expect, it } from "vitest";
import type { FoundChoice, MoreBuys } from "../../shared/buildings/choice-types.ts";
import type { BandChoices } from "../../shared/buildings/level-choices.ts";
import { buildingRows } from "../../shared/buildings/rows.ts";
import { SHOWN_STATES, shownStates } from "../../shared/buildings/shown-states.ts";
import { SORT_COLUMNS } from "../../shared/buildings/sort-rows.ts";
import type { RunsOut } from "../../shared/buildings/types.ts";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { buildingsCsv } from "../../shared/exports/buildings-csv.ts";
import { buildingsGeoJson } from "../../shared/exports/buildings-geojson.ts";
import type { ExportedBuildings } from "../../shared/exports/buildings-records.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { stateRemark, stateSentence, stateWords } from "../../shared/words/building-states.ts";
import {
  BUILDINGS,
  buysWords,
  canBeRingedWords,
  leftTimeWords,
  moreWords,
  mustDoWords,
  needsWords,
  proofWords,
  runsOutWords,
  untilWords,
  usedBags,
  usedHours,
  usedSand,
  withWords,
} from "../../shared/words/buildings-answer.ts";
import {
  curveLineWords,
  curveMatchWords,
  curveTopWords,
} from "../../shared/words/buildings-curve.ts";
import {
  chosenAtWords,
  FORECASTS,
  forecastRows,
  offWords,
  sameWords,
} from "../../shared/words/buildings-forecasts.ts";
import {
  cellWords,
  chosenWords,
  columnWords,
  groupWords,
  openedWords,
  rowName,
  TABLE,
  tabWords,
} from "../../shared/words/buildings-table.ts";
import { lowBehindNames, lowBehindWords } from "../../shared/words/low-behind.ts";
import { RING_LIST, stockLines, whyNotRinged } from "../../shared/words/ring-list.ts";
import { checkedBuilding, checkedGroup, lineOf } from "../helpers/checked-buildings.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";
import { readCsv } from "../helpers/read-csv.ts";

const SYSTEMS: readonly UnitSystem[] = ["us", "metric"];
const PLAN = {
  ...EMPTY_PLAN,
  title: "Teasel Ferry",
  water: { ...EMPTY_PLAN.water, by: "stage" as const, stageM: 7.5, gaugeZeroM: 149.5 },
};
const CHOICE: FoundChoice = {
  ...{ chosen: ["a+b"], buildings: ["a", "b"], weight: 2, bags: 7000, sandM3: 70, sheetM2: 700 },
  ...{ personHours: 350, bestPossible: 3.5, isProved: false, runsOutFirst: "people" },
  ...{ mustDoLeft: ["d"], peopleNeeded: 20, shortOf: ["people"], notTimed: [] },
  mustDoWhy: [{ id: "d", why: "no-line" }],
  mustDoNeeds: {
    takes: { bags: 9000, sandM3: 90, sheetM2: 900, personHours: 450, people: 30 },
    missing: { bags: 2000, sandM3: 20, sheetM2: 0, people: 10 },
  },
};
const BAND_CHOICE = { levelM: 157, flooded: 3, choice: CHOICE };
const BESIDE: BandChoices = {
  bands: { low: BAND_CHOICE, likely: BAND_CHOICE, high: BAND_CHOICE },
  same: { lines: ["a+b"], buildings: ["a", "b"] },
};
const SWEEP = {
  checked: new Map(
    [
      checkedBuilding("a", { line: lineOf(4000), firstWetAtS: 1_775_674_800, floorM: 156 }),
      checkedBuilding("b", { state: "over-limit", line: lineOf(6000, { lengthOverLimitM: 4 }) }),
      checkedBuilding("c", { state: "dry", line: null, depthM: 0 }),
      checkedBuilding("d", { state: "no-data", line: null, depthM: null }),
    ].map((each) => [each.id, each]),
  ),
  groups: [checkedGroup("a+b", ["a", "b"], { line: lineOf(7000) })],
};
const STATES = shownStates(SWEEP, CHOICE);
const ROWS = buildingRows({ sweep: SWEEP, states: STATES, choice: CHOICE, said: new Map() });
const CORNERS = [
  [-93, 45],
  [-93, 45.0001],
  [-92.9999, 45],
] as const;

function exportedIn(system: UnitSystem): ExportedBuildings {
  const buildings = [...SWEEP.checked.values()].map(({ id, name, floorM, weight, priority }) => ({
    ...{ id, name, floorM, weight, priority },
    parts: [CORNERS],
  }));
  return {
    ...{ plan: PLAN, buildings, sweep: SWEEP, states: STATES, rows: ROWS },
    ...{ isChosen: true, forecasts: null },
    ...{ verticalDatum: "NAVD 88", offsetMin: -300, system },
  };
}

describe.each(SYSTEMS)("what is said of many buildings, in %s units", (system) => {
  const outs: readonly RunsOut[] = ["bags", "sand", "sheet", "people", "time", "nothing"];
  const buys = (more: Partial<MoreBuys>): MoreBuys => ({
    ...{ more: { people: 40, sandM3: 76.455, bags: 10_000, hours: 6 }, weight: 0, buildings: 0 },
    ...{ mustDo: 0, isProved: true, runsOutFirst: "people", ...more },
  });
  const curve = {
    today: [
      { bags: 0, weight: 0, buildings: 0, mustDo: 0, isProved: true },
      { bags: 5000, weight: 3, buildings: 3, mustDo: 0, isProved: true },
      { bags: 9000, weight: 3, buildings: 3, mustDo: 0, isProved: true },
    ],
  };
  const sentences = [
    ...Object.values(BUILDINGS),
    ...Object.values(TABLE),
    ...Object.values(FORECASTS),
    ...[RING_LIST, RING_LIST.heads].flatMap((words) =>
      Object.values(words)
        .flat()
        .filter((each) => typeof each === "string"),
    ),
    ...stockLines(CHOICE, { bags: 9000, sandM3: 80 }, system),
    ...forecastRows(BESIDE, PLAN, system).flatMap(({ head, cells }) => [
      head,
      ...Object.values(cells),
    ]),
    sameWords(BESIDE, ["Clinic"]),
    chosenAtWords(BESIDE, "a+b"),
    offWords({ byM: 0.1, fewest: 1, most: 2 }, system),
    ...SHOWN_STATES.map((state) =>
      whyNotRinged(
        { state, failed: null, line: lineOf(100, { lengthOverLimitM: 3 }) },
        { priority: "", isOff: false },
        system,
      ),
    ),
    ...SHOWN_STATES.flatMap((state) => [
      ...stateWords(state, { plan: PLAN, system, lines: 3, isTimeKnown: true }),
      ...stateWords(state, { plan: PLAN, system, lines: null, isTimeKnown: false }),
      stateRemark(state),
      stateSentence({ state, line: lineOf(100, { lengthOverLimitM: 3 }), failed: null }, system) ??
        "",
    ]),
    stateSentence({ state: "no-data", line: null, failed: "site/x" }, system)!,
    ...outs.flatMap((out) => [runsOutWords(out), buysWords(buys({ runsOutFirst: out }))]),
    ...[buys({}), buys({ buildings: 2 }), buys({ mustDo: 1 })].flatMap((each) => [
      moreWords(each, system),
      buysWords(each),
    ]),
    ...[true, false].map((isProved) => proofWords({ ...CHOICE, isProved })),
    ...(["no-line", "must-not", "too-late", "not-enough"] as const).map((why) =>
      mustDoWords("Clinic", why),
    ),
    needsWords(CHOICE.mustDoNeeds!, system),
    usedBags(54_297, 120_000),
    usedBags(10, 5),
    usedSand(70, 688, system),
    usedHours(2858, { available: 2880, atWork: 90, hours: 32 }),
    untilWords("Thu 06:00"),
    untilWords(null),
    ...[null, 1, 12, 43, 500].map(leftTimeWords),
    canBeRingedWords(26, 37),
    withWords({ bags: 1000, people: 50, by: null }).rest,
    curveTopWords(26),
    curveLineWords(curve),
    curveMatchWords({ toMatch: CHOICE.mustDoNeeds!.takes }, 9000, system),
    curveMatchWords({ toMatch: null }, null, system),
    ...ROWS.flatMap((row) => [rowName(row), groupWords(row), ...openedWords(row, system)]),
    ...ROWS.flatMap((row) =>
      SORT_COLUMNS.filter((each) => each !== "name" && each !== "priority").map((column) =>
        cellWords(row, column, { system, offsetMin: -300 }),
      ),
    ),
    ...SORT_COLUMNS.flatMap((column) => columnWords(column, system, 30)),
    ...(["chosen", "flooded", "all"] as const).map((tab) => tabWords(tab, 400)),
    chosenWords(1, 1),
  ];

  it("has every figure, in these units alone, and no word that the trade does not use", () => {
    expect(sentences.length).toBeGreaterThan(100);
    for (const sentence of sentences) {
      expect(sentence).not.toMatch(/NaN|undefined|Infinity|null|object/);
      expect(sentence).not.toMatch(FOREIGN[system]);
      expect(sentence).not.toMatch(NEVER);
    }
  });

  it("leaves as CSV with the unit of every figure in its column's name, a row for each line and building", () => {
    const rows = readCsv(buildingsCsv(exportedIn(system)));
    const [head, ...records] = rows;
    const unit = system === "us" ? "ft" : "m";
    expect(head).toContain(`water_depth_${unit}`);
    expect(head).toContain("vertical_datum");
    const kinds = records.map(([kind]) => kind);
    expect(kinds.filter((kind) => kind === "Line")).toHaveLength(1);
    expect(kinds.filter((kind) => kind === "Building")).toHaveLength(4);
    const state = head!.indexOf("state");
    expect(records.filter(([kind]) => kind === "Building").map((row) => row[state])).toEqual([
      "ring",
      "ring",
      "not flooded at this water",
      "no elevation data",
    ]);
    for (const row of records) expect(row).toHaveLength(head!.length);
  });

  it("names in both files a building lower than the water that does not reach it", () => {
    const low = SWEEP.checked.get("c")!;
    const checked = new Map([...SWEEP.checked, ["c", { ...low, sillM: null, lowM: 156.2 }]]);
    const exported = { ...exportedIn(system), sweep: { ...SWEEP, checked } };
    const [head, ...records] = readCsv(buildingsCsv(exported));
    const column = head!.indexOf("lower_than_water_not_reached");
    const said = (row: readonly string[] | undefined) => row?.[column];
    const named = (id: string) => records.find((row) => row[0] === "Building" && row[2] === id);
    expect([said(named("c")), said(named("d"))]).toEqual(["true", ""]);
    expect(records.flatMap(([kind, note]) => (kind === "Caution" ? [note] : []))).toContain(
      lowBehindWords(1),
    );
    const { features } = JSON.parse(buildingsGeoJson(exported));
    const { properties } = features.find(
      (each: { properties: { id: string } }) => each.properties.id === "c",
    );
    expect(properties).toMatchObject({ lower_than_water_not_reached: true });
    expect(properties.cautions).toContain(lowBehindWords(1));
  });

  it("leaves as GeoJSON whose rings run counter-clockwise, with state and figures of each", () => {
    const { features } = JSON.parse(buildingsGeoJson(exportedIn(system)));
    expect(features).toHaveLength(5);
    expect(features[0].properties).toMatchObject({
      feature: "line",
      in_line: 1,
      bags_to_order: 7000,
    });
    expect(features[1].properties.ring_it).toBe(true);
    const [ring] = features[1].geometry.coordinates as [[number, number][]];
    expect(ring[0]).toEqual(ring.at(-1));
    const area = ring.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % ring.length]!;
      return sum + (x! + 93) * (nextY! - 45) - (nextX! + 93) * (y! - 45);
    }, 0);
    expect(area).toBeGreaterThan(0);
  });
});

it("buildings that lie lower than water that does not reach them are named, with what may let it in", () => {
  expect(lowBehindWords(1)).toMatch(
    /^1 building not reached over the ground lies lower than this water: a culvert/,
  );
  expect(lowBehindWords(1200)).toMatch(/^1,200 buildings not .* lie lower/);
  expect(lowBehindNames(["a", "b", "c"])).toBe("a, b and c.");
  const many = Array.from({ length: 75 }, (_, k) => `${k + 1} Mill Rd`);
  expect(lowBehindNames(many)).toMatch(/59 Mill Rd, 60 Mill Rd and 15 more\.$/);
});
