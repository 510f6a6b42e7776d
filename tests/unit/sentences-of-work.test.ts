import { describe, expect, it } from "vitest";
import {
  DEFAULT_PRACTICE,
  DEFAULT_SECTION,
  DEFAULT_TIME,
  EMPTY_PLAN,
} from "../../shared/defaults.ts";
import { typicalAccuracy } from "../../shared/ground-accuracy.ts";
import type { Pumping, PumpOption } from "../../shared/holding/types.ts";
import type { Plan } from "../../shared/plan.ts";
import type { CrossSection, PublishedCount, SizedLine } from "../../shared/sizing-types.ts";
import { riverClock } from "../../shared/time/river-clock.ts";
import type { AheadVerdict, LineTime, WorkStretch } from "../../shared/time/types.ts";
import type {
  Overtopping,
  TracedAlternative,
  WaterTrace,
  WayIn,
} from "../../shared/water-types.ts";
import { liftPictureWords, markMiddleWords } from "../../shared/words/crew-parts.ts";
import { crossSectionWords } from "../../shared/words/cross-section.ts";
import { datumDoubtWords } from "../../shared/words/datum-doubt.ts";
import { heightAccuracyWords } from "../../shared/words/ground-chances.ts";
import { gapLength } from "../../shared/words/ground-gap.ts";
import { leftOutOfHolding, raiseRoomWords } from "../../shared/words/holding.ts";
import { holesInsideWords } from "../../shared/words/inside.ts";
import { enclosedWords, lineSizeWords } from "../../shared/words/line.ts";
import { nextStepWords, uncountedWords } from "../../shared/words/next-steps.ts";
import { nothingBuiltWords } from "../../shared/words/nothing-built.ts";
import { orderBasis } from "../../shared/words/order-sheet.ts";
import { momentSaid, overtopsFirstWords, reachTitle } from "../../shared/words/profile.ts";
import { beyondTableWords, publishedWords, tableWords } from "../../shared/words/published.ts";
import {
  onePumpFails,
  onePumpFailsNote,
  wetInNote,
  wetInWords,
} from "../../shared/words/pumping.ts";
import { pumpEachWords } from "../../shared/words/pumps.ts";
import { spokenWords, stationWords } from "../../shared/words/reading.ts";
import { forecastRowsWords, momentHintWords } from "../../shared/words/river.ts";
import { butOverLimit, noSavingWords } from "../../shared/words/search.ts";
import { backToTypicalWords, typicalAccuracyNotes } from "../../shared/words/setting-notes.ts";
import { limitReachedWords } from "../../shared/words/stage-curve.ts";
import { namedLevel } from "../../shared/words/time.ts";
import {
  aheadCellWords,
  crestAboveWords,
  notInTimesWords,
  stillRisingWords,
} from "../../shared/words/time-cautions.ts";
import { sumpPlaceWords } from "../../shared/words/watch.ts";
import {
  coarseWaterWords,
  firstOverText,
  overPlaceWords,
  tintWords,
  wayInMarkWords,
  wayInText,
} from "../../shared/words/water-marks.ts";
import { scheduleWords, shortWorkWords, workAtHour, workWords } from "../../shared/words/work.ts";
import { workHoursWords } from "../../shared/words/work-hours.ts";
import { groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";

const STRETCH: WorkStretch = {
  ...{ fromM: 30, toM: 60, crew: 1, steps: [1, 2], isOnHold: false, lowestM: 264, crestM: 265.2 },
  ...{ bags: 812.4, startH: 2, finishH: 9.5, wetH: 20, leastAheadM: 0.4, leastSpareM: 0.1 },
};
const STRETCHES: readonly WorkStretch[] = [
  STRETCH,
  { ...STRETCH, finishH: 19 },
  { ...STRETCH, finishH: 22 },
  { ...STRETCH, finishH: null },
  { ...STRETCH, startH: null, finishH: null, wetH: null },
  { ...STRETCH, wetH: null },
  { ...STRETCH, leastSpareM: -0.01, leastAheadM: 0.1 },
  { ...STRETCH, leastSpareM: -0.6, leastAheadM: -0.3 },
  { ...STRETCH, leastSpareM: null, leastAheadM: null },
  { ...STRETCH, isOnHold: true, steps: [], startH: null, finishH: null },
];
const TIME = {
  startAt: "2026-04-06T07:00-05:00",
  missing: [],
  stretches: STRETCHES,
  parts: [{ crew: 1, toward: "N", steps: [] }],
} as unknown as LineTime;
const NO_CREW = { ...TIME, startAt: null, missing: ["people"] } as unknown as LineTime;
const PUMPING = {
  ...{ rainM3PerS: null, demandM3PerS: { low: 0.003, high: 0.01 }, capacityM3PerS: 0.015 },
  ...{ options: [], proposed: null, withoutPumps: [], oneFails: null },
  hoursToStructure: { soonest: 3.2, latest: null },
} satisfies Pumping;
const INSIDES = [{ structureM: 265 }, { structureM: null }, null];
const HOURS = [null, 3.2, 40];
const COUNT = {
  key: "NDSU-11",
  name: "Table 1",
  bags: 8027,
  coveredM: 400,
  beyondM: 30,
  why: "",
} as const satisfies PublishedCount;
const PLACES = [null, -0.1, 1.2].flatMap((heightM) =>
  [null, -0.1, 1.2, 1.9].map((greatestHeightM) => ({ chainageM: 30, heightM, greatestHeightM })),
);
const CUTS = [null, -0.1, 1.2].flatMap((greatestHeightM) =>
  ["pyramid", "earth-levee"].map(
    (section) =>
      ({
        ...{
          chainageM: 30,
          section,
          sectionName: "Earth levee",
          figures: {},
          heightM: 1,
          baseM: 3.6,
        },
        ...{ waterSide: 1, toeLeftM: 1.9, toeRightM: 1.7 },
        ...{ greatestHeightM, courses: 8, bagsPerM: 90, areaM2: 2.4, raiseToM: 266, crestM: 265.9 },
      }) as unknown as CrossSection,
  ),
);
/** Hours after noon on 6 April, meters over the gauge. */
const RIVER: Plan = {
  ...EMPTY_PLAN,
  time: {
    ...DEFAULT_TIME,
    forecast: {
      ...{ levels: "elevation", note: "" },
      rows: [260, 262.5, 261].map((levelM, k) => ({
        ...{ at: `2026-04-0${6 + k}T12:00-05:00`, levelM, lowM: null, highM: null },
      })),
    },
  },
};
/** The same without its last row: the highest water is the end of it. */
const RISING: Plan = {
  ...RIVER,
  time: {
    ...RIVER.time!,
    forecast: { ...RIVER.time!.forecast!, rows: RIVER.time!.forecast!.rows.slice(0, 2) },
  },
};
const WORKED = (people: number | null, shifts: number | null): Plan => ({
  ...RIVER,
  practice: { ...DEFAULT_PRACTICE, people },
  time: { ...RIVER.time!, startAt: "2026-04-06T07:00-05:00", shifts },
});

const WAY = {
  ...{ chainageM: 30, roundEnd: false, besideM: 3, structureId: "a", riseM: 0.3, elevationM: 266 },
};
const TRACED = { name: "A", dry: true, notKnown: null };
const LINE = ring(rectangle(40, 20));
const SIZED = size(
  planWith(100.4, { alignments: [LINE] }),
  LINE,
  groundOf(() => 99.5),
);

const BUILT = { builtLengthM: 420 };

describe.each(["us", "metric"] as const)(
  "what is said of work, pumps and tables in %s units",
  (system) => {
    const sentences = [
      ...[TIME, NO_CREW].flatMap((time) =>
        STRETCHES.flatMap((stretch) => [
          workWords(stretch, time, system),
          shortWorkWords(stretch, time),
        ]),
      ),
      scheduleWords(TIME),
      ...[-1, 4].flatMap((hour) =>
        [true, false].flatMap((stands) =>
          [null, 0.4, -0.3].map((leastAheadM) =>
            workAtHour(
              { hour, waterM: null, bagsLaid: 400, leastAheadM },
              { hour, bags: 14_276, startAt: TIME.startAt, stands },
              system,
            ),
          ),
        ),
      ),
      ...HOURS.flatMap((soonest) =>
        HOURS.flatMap((latest) =>
          INSIDES.map((inside) =>
            wetInWords({
              inside,
              pumping: { ...PUMPING, hoursToStructure: { soonest, latest } },
            } as unknown as Parameters<typeof wetInWords>[0]),
          ),
        ),
      ),
      ...([null, "floor", "ground"] as const).map((by) => wetInNote(by)),
      ...[0, 0.004].map((excessM3PerS) =>
        onePumpFails({ excessM3PerS, hoursToStructure: null, levels: [] }, system),
      ),
      ...[null, { excessM3PerS: 0, hoursToStructure: null, levels: [] }].map((oneFails) =>
        onePumpFailsNote({ ...PUMPING, oneFails }),
      ),
      ...HOURS.map((hoursToStructure) =>
        onePumpFailsNote({
          ...PUMPING,
          oneFails: { excessM3PerS: 1, hoursToStructure, levels: [] },
        }),
      ),
      ...[null, 8027].flatMap((bags) =>
        [400, 420].flatMap((coveredM) => [
          tableWords({ ...COUNT, bags, coveredM }, BUILT.builtLengthM, system),
          publishedWords([{ ...COUNT, bags, coveredM }], BUILT),
        ]),
      ),
      beyondTableWords(COUNT, system),
      ...PLACES.flatMap((place) => [
        stationWords(place, system),
        spokenWords(place, DEFAULT_SECTION, system),
        spokenWords(place, "Earth levee", system),
      ]),
      ...CUTS.map((cut) => crossSectionWords(cut, DEFAULT_SECTION, "0+30", system)),
      forecastRowsWords(RIVER.time!.forecast!, RIVER, riverClock(RIVER)!, system),
      momentHintWords(RIVER, riverClock(RIVER)!, system),
      ...[WORKED(60, 1), WORKED(60, 2), WORKED(null, null)].map((plan) =>
        workHoursWords(plan, system),
      ),
      heightAccuracyWords(null, 0.1, system),
      ...[null, 2400].flatMap((figure) => [
        enclosedWords(figure, 3, system),
        lineSizeWords(figure, 9, system),
      ]),
      butOverLimit({ lengthOverLimitM: 40 }, system),
      ...[0, 40, 420].map((lengthNoDataM) =>
        nothingBuiltWords({ lengthM: 420, lengthNoDataM } as Parameters<
          typeof nothingBuiltWords
        >[0]),
      ),
      ...overtopsFirstWords([{ chainageM: 30 }, { chainageM: 90 }], system),
      crestAboveWords({ waterM: 262.5, riseM: 0.4 }, RIVER, system),
      ...[RISING].map((plan) => stillRisingWords(riverClock(plan)!, plan, system)!),
      liftPictureWords(namedLevel(RIVER, 262.5, system)),
      notInTimesWords(gapLength({ totals: { lengthNoDataM: 40 } } as SizedLine, system)!),
      ...[null, 9].flatMap((behindFromH) =>
        [true, false].map((isPart) =>
          aheadCellWords({ behindFromH, leastSpareM: -0.3 } as AheadVerdict, TIME, isPart, system),
        ),
      ),
      ...(["line", "quantities", "holding", "time"] as const).flatMap((row) =>
        (["ground", "building", "line", "answer"] as const).map((missing) =>
          nextStepWords(row, missing),
        ),
      ),
      ...(["quantities", "time"] as const).map((row) => uncountedWords(row, "No ground here.")),
      ...[null, 265.4].flatMap((groundM) => {
        const way = { ...WAY, groundM } as unknown as WayIn;
        const { texts, title } = wayInMarkWords(way, system);
        return [...texts, title, wayInText(way, [], system)];
      }),
      ...(["crest", "ground"] as const).flatMap((over) => [
        overPlaceWords({ ...WAY, over } as unknown as Overtopping, 1, RIVER, system),
        firstOverText(
          { ...TRACED, firstOver: { ...WAY, over } } as unknown as TracedAlternative,
          RIVER,
          system,
        )!,
      ]),
      ...(["legend", "worksheet"] as const).flatMap((where) =>
        [true, false].map((resolvesLines) =>
          coarseWaterWords({ water: { cellM: 4, resolvesLines } } as WaterTrace, where, system),
        ),
      ),
      tintWords(null),
      ...[-1, null, 2].flatMap((limitRiseM) =>
        [0.5, 2].map((greatestHeightM) => {
          const points = [{ riseM: 0, waterM: 262, greatestHeightM }];
          return limitReachedWords(
            WORKED(60, 1),
            { curve: { points, limitRiseM } } as unknown as LineTime,
            system,
          );
        }),
      ),
      ...Object.values(orderBasis(EMPTY_PLAN, SIZED, system)),
      holesInsideWords(0.2),
      pumpEachWords(
        { kind: "trash", eachM3PerS: 0.01, working: 2, spare: 1 } as PumpOption,
        system,
      ),
      ...(["no-data", "bracing", "over-limit"] as const).map((of) =>
        leftOutOfHolding(of, 40, system),
      ),
      ...[-0.2, 0.2].map((leastM) => raiseRoomWords(leastM, system).replace(/^[:,] /, "")),
      noSavingWords(120, 2, system),
      ...typicalAccuracyNotes(typicalAccuracy(1), system),
      backToTypicalWords("accuracy", 0.1, system),
      ...SIZED.reaches.map((reach) => reachTitle(reach, 1, system)),
      markMiddleWords(30, "reach 2", system),
      ...[null, 30].map((chainageM) => sumpPlaceWords(chainageM, 264, system)),
      ...(["taken-as-equal", "by-average"] as const).map((kind) =>
        datumDoubtWords({ kind, errorM: 5 }, system),
      ),
      datumDoubtWords({ kind: "by-own-shift" }, system),
      ...[TIME, null].map((time) => momentSaid({ hour: 12, words: "Tue Apr 7, 07:00" }, time)),
    ];

    it("has every figure, in these units alone", () => {
      for (const sentence of sentences) {
        expect(sentence).toMatch(/^\S.*\S$/);
        expect(sentence).not.toMatch(/NaN|undefined|Infinity|null|object|\s{2,}/);
        expect(sentence).not.toMatch(FOREIGN[system]);
      }
    });

    it("has no word that the trade does not use, and promises nothing", () => {
      const { sand } = orderBasis(EMPTY_PLAN, SIZED, system);
      for (const sentence of sentences.filter((each) => each !== sand)) {
        expect(sentence).not.toMatch(NEVER);
      }
    });
  },
);

it("no cell says ahead for a line of which some is not known", () => {
  const verdict = { behindFromH: null, leastSpareM: 0.4 } as AheadVerdict;
  expect(aheadCellWords(verdict, TIME, true, "us")).toBe("not known");
  expect(aheadCellWords(verdict, TIME, false, "us")).toBe("ahead");
});

it("a line of which nothing is known is not called above the water", () => {
  const words = nothingBuiltWords({ lengthM: 420, lengthNoDataM: 420 } as Parameters<
    typeof nothingBuiltWords
  >[0]);
  expect(words).toContain("nothing can be counted");
});
