import { describe, expect, it } from "vitest";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { Behind, BuiltSoFar } from "../../shared/field/built-so-far.ts";
import type { PlaceOnLine } from "../../shared/field/place-on-line.ts";
import { stakedLine, stretchesOfStakes } from "../../shared/field/stakes.ts";
import type { LeaveLevel, Plan, ProgressMark } from "../../shared/plan.ts";
import { BUILD_STATES } from "../../shared/plan-schema.ts";
import { sumpWords } from "../../shared/words/build-sheet.ts";
import { crossSectionWords } from "../../shared/words/cross-section.ts";
import {
  cautionsAtStakeWords,
  fieldFacts,
  heightInStepsWords,
  lineCommaWords,
  mustFixAtStakeWords,
  sectionHeadWords,
  stakeCountWords,
} from "../../shared/words/field.ts";
import {
  addedWords,
  behindWords,
  builtShortWords,
  markWords,
  notStartedWords,
  otherPlanWords,
  photoSizeWords,
  reachedRows,
} from "../../shared/words/field-built.ts";
import { codeCountWords, codesReadWords } from "../../shared/words/field-codes.ts";
import { layingWords } from "../../shared/words/field-laying.ts";
import { leaveInFullWords, overtopsSentence } from "../../shared/words/field-leave.ts";
import { classRangeWords, noMapWords } from "../../shared/words/field-map.ts";
import { gpsShortWords, placeWords, toStakeWords } from "../../shared/words/field-place.ts";
import { addedMarksNote, markedNote } from "../../shared/words/field-progress.ts";
import { mustFixBand } from "../../shared/words/must-fix-band.ts";
import { heightFigure } from "../../shared/words/stakes-page.ts";
import { pumpBoxes } from "../../shared/words/watch.ts";
import { notPlacedWords, workPlaceWords } from "../../shared/words/work-places.ts";
import { groundOf, lonLats, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";
import { cutOver } from "../helpers/profile-fixture.ts";

/** Partly over the height limit, partly without elevation data. */
const GROUND = groundOf((x, y) => (x > 30 && y > 0 ? Number.NaN : x < -20 ? 98.9 : 100));
const LINE = { ...ring(rectangle(40, 20)), name: "Drawn ring" };
const PLAN: Plan = planWith(100.4, {
  alignments: [LINE],
  survey: {
    benchmark: { name: "BM 1, well pad", elevationM: 101.2, at: null },
    backsightM: 0.9,
    readings: [],
  },
  workPlaces: [
    { id: "p", name: "Bag pile 1", kind: "pile", path: lonLats([[0, 0]]) },
    { id: "q", name: "Pumps 1", kind: "pumps", path: lonLats([[5, 0]]) },
    {
      id: "t",
      name: "Lane",
      kind: "truck-way",
      path: lonLats([
        [0, 0],
        [9, 0],
      ]),
    },
  ],
});
const SIZED = size(PLAN, LINE, GROUND);
const STAKED = stakedLine(SIZED);
const [STRETCH] = stretchesOfStakes(STAKED);
const MARK: ProgressMark = {
  ...{ lineId: "a", fromM: 0, toM: 7.62, state: "to-height", atS: 1_775_674_800 },
  ...{ planNumber: "7F3A-21", by: "Ana", clearedBy: "J. Ortiz", note: "", photoId: "" },
};
const BUILT = {
  reachedM: { "not-begun": 0, begun: 60.2, "to-height": 38.1, "poly-on": 20, checked: 0 },
  toBuildM: 240,
  ofOtherPlan: 2,
} as unknown as BuiltSoFar;
const BEHIND_ONE = { stretch: STRETCH, wetH: 20 };
const BEHINDS = [null, [], [BEHIND_ONE], Array.from({ length: 6 }, () => BEHIND_ONE)].flatMap(
  (list) =>
    [null, BEHIND_ONE].map((next) => {
      const others = list?.slice(0, 1) ?? [];
      return { late: list, noHour: others, inWater: list, noGround: others, next };
    }),
) as unknown as readonly Behind[];
const PLACE: PlaceOnLine = {
  ...{ chainageM: 12, awayM: 3.2, accuracyM: 4.1, alsoM: null, isOff: false, isPoor: false },
} as PlaceOnLine;
const PLACES = [{}, { isOff: true }, { isPoor: true }, { alsoM: 90 }].map((each) => ({
  ...PLACE,
  ...each,
}));
const LEAVES = [
  { by: "stage", levelM: 9.14, at: "2026-04-08T11:00-05:00", note: "" },
  { by: "stage", levelM: 9.14, at: null, note: "" },
  { by: "elevation", levelM: 266, at: null, note: "" },
] as readonly LeaveLevel[];

const CUT = cutOver(() => 260, 261);
/** The same line on ground that slopes, so that its halves are not of round figures. */
const SLOPING = size(
  PLAN,
  LINE,
  groundOf((x, y) => 99.6 + 0.004 * x + 0.003 * y),
);

describe.each(["us", "metric"] as const)("what is said in the field in %s units", (system) => {
  const { stations, checks, holding } = SIZED;
  const of = { plan: PLAN, line: SIZED, system };
  const sentences = [
    ...stations.flatMap((station) => [
      ...[STRETCH!, null].flatMap((stretch) =>
        fieldFacts({ ...of, station, stretch }).flatMap(({ name, value, notes }) => [
          name,
          value,
          ...notes,
        ]),
      ),
      sectionHeadWords(station, system),
      heightInStepsWords(station.greatestHeightM ?? 0, system),
    ]),
    ...mustFixAtStakeWords(checks, true, system),
    ...mustFixAtStakeWords([], true, system),
    ...cautionsAtStakeWords(checks, system),
    lineCommaWords(PLAN, SIZED),
    stakeCountWords(3, 43),
    ...layingWords(DEFAULT_SECTION, system).map(({ text }) => text),
    ...(["off", "waiting", "fix", "refused", "none", "lost"] as const).map(gpsShortWords),
    ...PLACES.flatMap((place) => [
      placeWords(place, system),
      toStakeWords(place, STAKED, 40, system),
    ]),
    ...LEAVES.map((leave) => leaveInFullWords(leave, system)),
    overtopsSentence(null, SIZED, PLAN, checks, system),
    ...Array.from({ length: 5 }, (_, k) => classRangeWords(k, 1.2192, system)),
    ...(["no-graphics", "lost"] as const).flatMap(noMapWords),
    builtShortWords(BUILT, system),
    ...reachedRows(BUILT, system).flatMap(({ name, value }) => [name, value]),
    otherPlanWords(BUILT, "7F3A-21")!,
    ...BEHINDS.flatMap((behind) =>
      [null, 40].flatMap((endedH) => behindWords(behind, "2026-04-06T07:00-05:00", endedH, system)),
    ),
    notStartedWords("2026-04-06T07:00-05:00", system),
    ...BUILD_STATES.flatMap((state) => [
      markWords({ ...MARK, state }, -300, system),
      markedNote({ ...MARK, state }, system),
    ]),
    photoSizeWords(184_000),
    ...[0, 1, 4].flatMap((count) => [addedWords(count), addedMarksNote(count)]),
    codeCountWords(0, 3),
    codesReadWords(1, 3),
    ...pumpBoxes(holding!, system).flatMap(({ title, text }) => [title, text]),
    ...[true, false].flatMap((hasPumps) =>
      holding!.inside ? sumpWords(holding!, { awayM: 2, chainageM: 30 }, hasPumps, system) : [],
    ),
    ...PLAN.workPlaces!.flatMap((place) => workPlaceWords(place, of, { chainageM: 30 })),
    ...[PLAN.workPlaces!.slice(1), []].flatMap((places) =>
      [true, false].map((hasBenchmark) => notPlacedWords(places, hasBenchmark)!),
    ),
    ...[null, { fromM: 0, toM: 20 }].flatMap((part) => {
      const { named, rest } = mustFixBand([...checks, ...checks], part, system);
      return [...named, ...(rest === null ? [] : [rest])];
    }),
  ];

  it("says one width of the base: of the two halves as staked, and as the cross-section does", () => {
    const figure = (text: string) => Number(/[\d.]+/.exec(text)?.[0]);
    for (const station of SLOPING.stations) {
      const { toeWatersideM, toeLandsideM } = station;
      const base = fieldFacts({ ...of, line: SLOPING, station, stretch: null })[1]!.value;
      const halves = [toeWatersideM, toeLandsideM].map((m) => Number(heightFigure(m, system)));
      expect(figure(base)).toBeCloseTo(halves[0]! + halves[1]!, 9);
      const cross = {
        ...CUT,
        ...{ waterSide: 1 as const, toeLeftM: toeWatersideM!, toeRightM: toeLandsideM! },
      };
      expect(crossSectionWords(cross, DEFAULT_SECTION, "0+00", system)).toContain(`base ${base}`);
    }
    expect(SLOPING.stations.length).toBeGreaterThan(5);
  });

  it("has every figure, in these units alone", () => {
    expect(sentences.length).toBeGreaterThan(200);
    for (const sentence of sentences) {
      expect(sentence).toMatch(/^\S(?:.*\S)?$/);
      expect(sentence).not.toMatch(/NaN|undefined|Infinity|null|object|\s{2,}/);
      expect(sentence).not.toMatch(FOREIGN[system]);
    }
  });

  it("has no word that the trade does not use, and promises nothing", () => {
    for (const sentence of sentences) expect(sentence).not.toMatch(NEVER);
  });
});
