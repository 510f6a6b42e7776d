import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Alignment, ReachSection } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { STANDARD, sectionsOf } from "../../shared/reaches.ts";
import { SECTIONS } from "../../shared/sections.ts";
import type { Check } from "../../shared/sizing-types.ts";
import { withCopy } from "../../src/document/edits/alternatives.ts";
import { withCornerInserted } from "../../src/document/edits/corners.ts";
import {
  buildStretch,
  type Stretch,
  withBreak,
  withBreakMoved,
  withFigure,
  withoutBreak,
  withReachBuilt,
  withStretch,
} from "../../src/document/edits/reaches.ts";
import { plan, startFrom, undo } from "../../src/document/store.ts";
import { proposedSection, roundedOut } from "../../src/worksheet/line/stretch-draft.ts";
import { openLine, rectangle, ring } from "../helpers/grounds.ts";

/** An area that a person named like a levee type. */
const NAMED = { kind: "no-go", area: "Plywood box filled with sand" } as const;

const LENGTH_M = 200;
const [WALL, BOX]: ReachSection[] = SECTIONS.slice(1, 3).map(({ id }) => ({
  section: id,
  figures: {},
}));
const plain: Alignment = ring(rectangle(30, 20));

function done<T>(outcome: { ok: true; value: T } | { ok: false; failure: unknown }): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  return outcome.value;
}

const names = (line: Alignment) => sectionsOf(line).map(({ section }) => section);
const stretched = (line: Alignment, stretch: Stretch, built = WALL!) =>
  done(withStretch(line, stretch, built, LENGTH_M));

/** What stands at a chainage: an oracle that knows nothing of breaks' indices. */
function sectionAt(line: Alignment, chainageM: number): string {
  const index = line.reachBreaksM.filter((breakM) => breakM <= chainageM).length;
  return sectionsOf(line)[index]!.section;
}

describe("dividing a line", () => {
  it("builds both halves as the whole was", () => {
    const line = stretched(plain, { fromM: 40, toM: 120 });
    const divided = done(withBreak(line, 80, LENGTH_M));
    expect(divided.reachBreaksM).toEqual([40, 80, 120]);
    expect(names(divided)).toEqual([
      STANDARD.section,
      WALL!.section,
      WALL!.section,
      STANDARD.section,
    ]);
  });

  it("and joining builds both as the first was", () => {
    const line = stretched(stretched(plain, { fromM: 40, toM: 80 }), { fromM: 80, toM: 120 }, BOX);
    const joined = withoutBreak(line, 80);
    expect(joined.reachBreaksM).toEqual([40, 120]);
    expect(names(joined)).toEqual([STANDARD.section, WALL!.section, STANDARD.section]);
    const freed = withoutBreak(withoutBreak(joined, 40), 120);
    expect(freed).toEqual(plain);
  });

  it("moves a break between its neighbours, and refuses to pass one", () => {
    const line = stretched(plain, { fromM: 40, toM: 120 });
    const moved = done(withBreakMoved(line, 0, 60.5, LENGTH_M));
    expect(moved.reachBreaksM).toEqual([60.5, 120]);
    expect(names(moved)).toEqual(names(line));
    for (const toM of [130, 120.2, 0.1, 250]) {
      expect(withBreakMoved(line, 0, toM, LENGTH_M).ok, `${toM}`).toBe(false);
    }
  });

  it("changes nothing outside a stretch and everything inside, on any line, round the closing point too", () => {
    const station = fc.integer({ min: 2, max: LENGTH_M - 2 });
    fc.assert(
      fc.property(
        fc.uniqueArray(station, { maxLength: 5 }),
        fc.array(fc.constantFrom(STANDARD, WALL!, BOX!), { maxLength: 6 }),
        station,
        station,
        (breaks, reachSections, fromM, toM) => {
          fc.pre(Math.abs(fromM - toM) >= 1);
          const before = { ...plain, reachBreaksM: breaks.sort((a, b) => a - b), reachSections };
          const after = stretched(before, { fromM, toM });
          expect(after.reachBreaksM).toEqual([...after.reachBreaksM].sort((a, b) => a - b));
          for (let chainageM = 0.5; chainageM < LENGTH_M; chainageM++) {
            const inside =
              fromM < toM
                ? chainageM > fromM && chainageM < toM
                : chainageM > fromM || chainageM < toM;
            const expected = inside ? WALL!.section : sectionAt(before, chainageM);
            expect(sectionAt(after, chainageM)).toBe(expected);
          }
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  it("takes a break that is as good as there for a stretch's end", () => {
    const line = done(withBreak(plain, 40, LENGTH_M));
    expect(stretched(line, { fromM: 40.3, toM: 200.2 }).reachBreaksM).toEqual([40]);
  });

  it.each([
    ["beyond the end", { fromM: 40, toM: 260 }],
    ["of no length", { fromM: 40, toM: 40.4 }],
    ["that is not a number", { fromM: Number.NaN, toM: 60 }],
  ])("refuses a stretch %s", (_, stretch) => {
    expect(withStretch(plain, stretch, WALL!, LENGTH_M).ok).toBe(false);
  });

  it("refuses a stretch over the end of an open line", () => {
    const open = openLine([
      [0, 0],
      [200, 0],
    ]);
    expect(withStretch(open, { fromM: 150, toM: 50 }, WALL!, LENGTH_M).ok).toBe(false);
  });
});

describe("what reaches are built as", () => {
  const line = stretched(plain, { fromM: 40, toM: 120 });

  it("leaves nothing behind when all is standard again, nor a figure at its default", () => {
    expect(withReachBuilt(line, 1, STANDARD)).toEqual({ ...plain, reachBreaksM: [40, 120] });
    const wide = withFigure(WALL!, "widthM", 1);
    expect(wide.figures).toEqual({ widthM: 1 });
    expect(withFigure(wide, "widthM", null)).toEqual(WALL);
  });

  it("stays when a corner is put in, and goes along with a copy", () => {
    expect(withCornerInserted(line, 1).reachSections).toEqual(line.reachSections);
    const copied = withCopy({ ...EMPTY_PLAN, alignments: [line], chosenId: line.id }, line.id, "n");
    expect(copied.alignments[1]!.reachSections).toEqual(line.reachSections);
    expect(validatePlan(copied)).toMatchObject({ ok: true });
  });
});

describe("building a stretch through the gate", () => {
  beforeEach(() => {
    done(startFrom({ plan: { ...EMPTY_PLAN, alignments: [plain], chosenId: plain.id } }));
  });

  it("is one step: one undo gives the plan back as it was", () => {
    const before = plan.value;
    done(buildStretch(plain, { fromM: 40, toM: 120 }, BOX!, LENGTH_M));
    expect(names(plan.value.alignments[0]!)).toEqual([
      STANDARD.section,
      BOX!.section,
      STANDARD.section,
    ]);
    undo();
    expect(plan.value).toEqual(before);
  });
});

describe("a finding that proposes a levee type", () => {
  const check = (fits: readonly string[], toM = 60): Check => ({
    ...{ id: "bases-overlap", severity: "caution", fromM: 40, toM, at: null, where: null },
    finding: {
      ...{ kind: "bases-overlap", otherM: 0, lengthM: 20 },
      fits: fits.map((typeId) => ({ typeId, baseM: 2 })),
    },
  });

  it("leads to the first it proposes, the standard one left out", () => {
    expect(proposedSection(check(["pyramid", "plywood-box", "braced-wall"]))).toBe("plywood-box");
  });

  it("leads nowhere when it proposes none, the standard one alone, or speaks of no stretch", () => {
    expect(proposedSection(check([]))).toBeNull();
    expect(proposedSection(check(["pyramid"]))).toBeNull();
    expect(proposedSection(check(["plywood-box"], 40))).toBeNull();
    const named = { ...check([]), id: "no-go" as const, finding: NAMED };
    expect(proposedSection(named)).toBeNull();
  });

  it("is led out past both ends to round stations, and not past the line's own", () => {
    const found = { fromM: 5.02, toM: 61.1 };
    expect(roundedOut(found, 200, "metric")).toEqual({ fromM: 4, toM: 62 });
    expect(roundedOut({ fromM: 0.3, toM: 199.8 }, 200, "metric")).toEqual({ fromM: 0, toM: 200 });
    const feet = roundedOut({ fromM: 513 * FOOT_M, toM: 648 * FOOT_M }, 1000, "us");
    expect(feet.fromM / FOOT_M).toBeCloseTo(510, 9);
    expect(feet.toM / FOOT_M).toBeCloseTo(650, 9);
  });
});
