import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { type BuiltSoFar, behindNow, builtSoFar } from "../../shared/field/built-so-far.ts";
import { fromBase45, toBase45 } from "../../shared/field/code-bytes.ts";
import { builtOf, markMomentS, markOf, mergedProgress } from "../../shared/field/progress.ts";
import {
  type CodesRead,
  progressCodes,
  readCodes,
  withCode,
} from "../../shared/field/progress-codes.ts";
import type { Staked } from "../../shared/field/stakes.ts";
import type { Plan, ProgressMark } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { BUILD_STATES } from "../../shared/plan-schema.ts";
import { cleanText } from "../../shared/plan-text.ts";
import type { SizedLine, Station } from "../../shared/sizing-types.ts";
import { behindWords } from "../../shared/words/field-built.ts";
import { type QrPicture, qrPictures, qrReader } from "../../src/field/qr.ts";
import { said } from "../helpers/said.ts";

const NUMBER = "7F3A-21";
const MARK: ProgressMark = {
  ...{ lineId: "a", fromM: 129.54, toM: 137.16, state: "to-height", atS: 1_775_000_000 },
  ...{ planNumber: NUMBER, by: "Ana", clearedBy: "", note: "", photoId: "" },
};

const words = fc.string({ unit: "grapheme", maxLength: 20 }).map((text) => cleanText(text).trim());
const mark: fc.Arbitrary<ProgressMark> = fc.record({
  lineId: fc.constantFrom("a", "b"),
  fromM: fc.integer({ min: 0, max: 4 }).map((n) => n * 7.62),
  toM: fc.integer({ min: 5, max: 7 }).map((n) => n * 7.62),
  state: fc.constantFrom(...BUILD_STATES),
  atS: fc.integer({ min: 1_775_000_000, max: 1_775_000_003 }),
  planNumber: fc.constantFrom(NUMBER, "0000-01"),
  by: fc.constantFrom("", "Ana", "Bo"),
  clearedBy: fc.constantFrom("", "Engineer"),
  note: words,
  photoId: fc.constantFrom("", "p1"),
});
const marks = fc.array(mark, { maxLength: 12 });

describe("what two phones say is built", () => {
  it("comes to the same in whichever order and however often it is put together", () => {
    fc.assert(
      fc.property(marks, marks, marks, (a, b, c) => {
        const ab = mergedProgress(a, b);
        expect(mergedProgress(b, a)).toEqual(ab);
        expect(mergedProgress(ab, b)).toEqual(ab);
        expect(mergedProgress(ab, ab)).toEqual(ab);
        expect(mergedProgress(mergedProgress(a, b), c)).toEqual(
          mergedProgress(a, mergedProgress(b, c)),
        );
      }),
    );
  });

  it("is of each stretch the mark made last, and of no other", () => {
    fc.assert(
      fc.property(marks, marks, (a, b) => {
        const all = [...a, ...b];
        const key = ({ lineId, fromM, toM }: ProgressMark) => `${lineId} ${fromM} ${toM}`;
        const merged = mergedProgress(a, b);
        expect(new Set(merged.map(key))).toEqual(new Set(all.map(key)));
        for (const each of merged) {
          const same = all.filter((other) => key(other) === key(each));
          expect(each.atS).toBe(Math.max(...same.map(({ atS }) => atS)));
        }
      }),
    );
  });

  it("keeps a new mark over one from a clock that is ahead", () => {
    const ahead = { ...MARK, atS: 1_775_003_600 };
    const atS = markMomentS(1_775_000_000.7, ahead);
    const next: ProgressMark = { ...MARK, state: "begun", atS };
    expect(mergedProgress([ahead], [next])).toEqual([next]);
    expect(markMomentS(1_775_000_000.7, null)).toBe(1_775_000_000);
  });
});

describe("a mark", () => {
  it("of another plan's heights is begun and no more", () => {
    expect(builtOf(MARK, NUMBER)).toEqual({ state: "to-height", mark: MARK, isOfOtherPlan: false });
    expect(builtOf(MARK, "0000-01").state).toBe("begun");
    expect(builtOf({ ...MARK, state: "not-begun" }, "0000-01").state).toBe("not-begun");
    expect(builtOf(null, NUMBER).state).toBe("not-begun");
  });

  it("is found by its stretch to the centimetre", () => {
    expect(markOf([MARK], "a", { fromM: 129.5401, toM: 137.1599 })).toBe(MARK);
    expect(markOf([MARK], "a", { fromM: 129.56, toM: 137.16 })).toBeNull();
    expect(markOf([MARK], "b", { fromM: 129.54, toM: 137.16 })).toBeNull();
  });

  it("is in the plan file as it was made; a plan without one is written as before", () => {
    const plan: Plan = { ...EMPTY_PLAN, progress: [{ ...MARK, note: "soft at the toe" }] };
    const read = readPlanFile(writePlanFile(plan));
    expect(read.ok && read.value.plan.progress).toEqual(plan.progress);
    expect(JSON.parse(writePlanFile(EMPTY_PLAN)).drystead).not.toHaveProperty("progress");
    const older = readPlanFile(writePlanFile(EMPTY_PLAN));
    expect(older.ok && "progress" in older.value.plan).toBe(false);
  });

  it.each([
    ["state", "finished", /how far it is built \(state\) to be one of/],
    ["atS", 1.5, /whole seconds; came 1.5/],
    ["atS", -1, /when it was marked \(atS\) from 0/],
    ["toM", 129.54, /to end \(toM\) after it starts/],
    ["fromM", "0", /the start of what is built \(fromM\)/],
    ["extra", 1, /without the unknown entry/],
  ])("with %s %s in a file is refused by name", (key, value, words) => {
    const file = JSON.parse(writePlanFile({ ...EMPTY_PLAN, progress: [MARK] }));
    file.drystead.progress[0][key] = value;
    const read = readPlanFile(JSON.stringify(file));
    expect(read.ok).toBe(false);
    if (!read.ok) expect(said(read.failure).message).toMatch(words);
  });

  it.each([[7], [[null]], [["a"]], ["all"]])("list that is %j is refused", (progress) => {
    const file = JSON.parse(writePlanFile(EMPTY_PLAN));
    file.drystead.progress = progress;
    expect(readPlanFile(JSON.stringify(file)).ok).toBe(false);
  });
});

const carriedMarks = marks.map((list) =>
  list.map(({ lineId: _line, photoId: _photo, planNumber: _number, fromM, toM, ...rest }) => ({
    ...rest,
    fromM: Math.round(fromM * 100) / 100,
    toM: Math.round(toM * 100) / 100,
  })),
);

function readAll(texts: readonly string[]): CodesRead {
  let read: CodesRead | null = null;
  for (const text of texts) {
    const next = withCode(read, text);
    if (!next.ok) throw new Error(said(next.failure).message);
    read = next.value;
  }
  return read!;
}

describe("codes of what is built", () => {
  it("are read back as they were, in any order and more than once", () => {
    fc.assert(
      fc.property(carriedMarks, fc.infiniteStream(fc.nat()), (list, random) => {
        const carried = { planNumber: NUMBER, marks: list };
        const texts = progressCodes(carried);
        const shuffled = [...texts, ...texts]
          .map((text) => ({ text, by: random.next().value as number }))
          .sort((a, b) => a.by - b.by)
          .map(({ text }) => text);
        expect(readCodes(readAll(shuffled))).toEqual(carried);
      }),
    );
  });

  it("cycle where one is too small, and say nothing until all are read", () => {
    const { lineId: _line, photoId: _photo, planNumber: _number, ...one } = MARK;
    const list = Array.from({ length: 60 }, (_, k) => ({
      ...one,
      fromM: k * 7.62,
      toM: (k + 1) * 7.62,
      note: `note ${k}`,
    }));
    const texts = progressCodes({ planNumber: NUMBER, marks: list });
    expect(texts.length).toBeGreaterThan(3);
    expect(readCodes(readAll(texts.slice(1)))).toBeNull();
    expect(readCodes(readAll([...texts].reverse()))?.marks).toHaveLength(60);
  });

  it("that are damaged, mixed or of something else are refused", () => {
    const { lineId: _line, photoId: _photo, planNumber: _number, ...one } = MARK;
    const [text] = progressCodes({ planNumber: NUMBER, marks: [one] }) as [string];
    for (const other of ["", "https://example.com", text.slice(5), "DSP1:00000000:2/1:00"]) {
      expect(withCode(null, other)).toMatchObject({ ok: false, failure: { code: "codes/other" } });
    }
    const head = text.slice(0, text.lastIndexOf(":") + 1);
    const body = text.slice(head.length);
    fc.assert(
      fc.property(fc.nat(body.length - 1), fc.constantFrom(..."0A/Z"), (at, letter) => {
        fc.pre(body[at] !== letter);
        const damaged = withCode(null, head + body.slice(0, at) + letter + body.slice(at + 1));
        if (damaged.ok) expect(() => readCodes(damaged.value)).toThrow(/^codes\/damaged/);
      }),
    );
  });

  it("begin anew with a code of another message", () => {
    const { lineId: _line, photoId: _photo, planNumber: _number, ...one } = MARK;
    const first = progressCodes({ planNumber: NUMBER, marks: [one] });
    const second = progressCodes({ planNumber: NUMBER, marks: [{ ...one, note: "later" }] });
    expect(readCodes(readAll([...first, ...second]))?.marks[0]?.note).toBe("later");
  });

  it("are pictures that a camera's reader finds again", async () => {
    const { lineId: _line, photoId: _photo, planNumber: _number, ...one } = MARK;
    const texts = progressCodes({ planNumber: NUMBER, marks: [{ ...one, note: "é 20 ft" }] });
    const [pictures, readQr] = await Promise.all([qrPictures(texts), qrReader()]);
    expect(pictures.map((picture) => readQr(pixelsOf(picture)))).toEqual(texts);
    const blank = pixelsOf({ path: "", sizeModules: 29 });
    expect(readQr(blank)).toBeNull();
  });

  it("have the letters of RFC 9285", () => {
    const bytes = (text: string) => new TextEncoder().encode(text);
    expect(toBase45(bytes("AB"))).toBe("BB8");
    expect(toBase45(bytes("Hello!!"))).toBe("%69 VD92EX0");
    expect(toBase45(bytes("base-45"))).toBe("UJCLQE7W581");
    expect(new TextDecoder().decode(fromBase45("QED8WEX0")!)).toBe("ietf!");
    for (const bad of ["GGW", ":::", "A", "ab0"]) expect(fromBase45(bad)).toBeNull();
  });
});

/** A code as a camera's picture, eight pixels to a module. */
function pixelsOf({ path, sizeModules }: QrPicture): ImageData {
  const scale = 8;
  const width = sizeModules * scale;
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let dy = 0; dy < scale; dy++) {
      for (let dx = 0; dx < scale; dx++) {
        const at = ((Number(y) * scale + dy) * width + Number(x) * scale + dx) * 4;
        data.fill(0, at, at + 3);
      }
    }
  }
  return { data, width, height: width, colorSpace: "srgb" } as ImageData;
}

/** 40 m of line on ground that rises by a meter from one end to the other, with water sized for 105 m. */
const LINE = {
  id: "a",
  walk: {
    chainageM: Float64Array.from({ length: 41 }, (_, i) => i),
    lowestGroundM: Float64Array.from({ length: 41 }, (_, i) => 103 + i / 40),
    greatestHeightM: Float64Array.from({ length: 41 }, () => 1),
    waterM: Float64Array.from({ length: 41 }, () => 105),
  },
} as unknown as Pick<SizedLine, "id" | "walk">;
const STAKED: Staked = {
  isRing: false,
  lengthM: 40,
  stakes: [0, 10, 20, 30, 40].map((chainageM) => ({ chainageM }) as Station),
};
const marked = (
  fromM: number,
  state: ProgressMark["state"],
  planNumber = NUMBER,
): ProgressMark => ({
  ...MARK,
  ...{ fromM, toM: fromM + 10, state, planNumber },
});

describe("what is built so far", () => {
  it("adds up by how far each stretch is built", () => {
    const sum = builtSoFar(
      LINE,
      STAKED,
      [
        marked(0, "checked"),
        marked(10, "to-height"),
        marked(20, "begun"),
        marked(30, "checked", "X"),
      ],
      NUMBER,
    );
    expect(sum.toBuildM).toBe(40);
    expect(sum.reachedM).toEqual({ begun: 40, "to-height": 20, "poly-on": 10, checked: 10 });
    expect(sum.ofOtherPlan).toBe(1);
  });

  it("leaves out a stretch on which nothing is built", () => {
    const heights = Float64Array.from({ length: 41 }, (_, i) => (i <= 20 ? 0 : 1));
    const line = { ...LINE, walk: { ...LINE.walk, greatestHeightM: heights } };
    expect(builtSoFar(line, STAKED, [], NUMBER).toBuildM).toBe(20);
  });

  it("is held against the build sequence and the river", () => {
    const sum = builtSoFar(LINE, STAKED, [marked(0, "to-height")], NUMBER);
    const work = [0, 10, 20, 30].map((fromM, k) => ({
      fromM,
      toM: fromM + 10,
      finishH: 2 * k + 2,
    }));
    const river = { levelAtH: (hour: number) => 103 + hour / 10, fromH: 0, toH: 20 };
    const behind = behindNow(LINE, sum, { work, river, sizedForM: 105, nowH: 4 });
    expect(behind.late!.map(({ stretch }) => stretch.fromM)).toEqual([10]);
    expect(behind.inWater!.map(({ stretch }) => stretch.fromM)).toEqual([10]);
    expect(behind.next).toMatchObject({ stretch: { fromM: 20 }, wetH: 5 });
  });

  it("says nothing of what nobody gave", () => {
    const sum = builtSoFar(LINE, STAKED, [], NUMBER) as BuiltSoFar;
    const behind = behindNow(LINE, sum, { work: [], river: null, sizedForM: 105, nowH: 4 });
    expect(behind).toEqual({ late: null, noHour: [], inWater: null, noGround: [], next: null });
  });

  it("knows nothing of the water where ground is missing, and of no hour where a step has none", () => {
    const sum = builtSoFar(LINE, STAKED, [], NUMBER);
    const lowestGroundM = Float64Array.from(LINE.walk.lowestGroundM, (m, i) =>
      i >= 12 && i <= 18 ? Number.NaN : m,
    );
    const line = { ...LINE, walk: { ...LINE.walk, lowestGroundM } };
    const work = [{ fromM: 0, toM: 20, finishH: null }];
    const river = { levelAtH: () => 90, fromH: 0, toH: 20 };
    const behind = behindNow(line, sum, { work, river, sizedForM: 105, nowH: 4 });
    const startsOf = (list: readonly { readonly stretch: { readonly fromM: number } }[]) =>
      list.map(({ stretch }) => stretch.fromM);
    expect([startsOf(behind.noGround), startsOf(behind.noHour)]).toEqual([[10], [0, 10]]);
    const said = behindWords(behind, null, null, "metric").join(" ");
    expect(said).toContain("No hour in the build sequence: 0+000.0 to 0+020.0.");
    expect(said).toContain("whether water is there is not known: 0+010.0 to 0+020.0.");
    expect(said).not.toMatch(/^Nothing is behind|at ground that is not up to height/);
  });

  it("is said as one stretch where stakes follow each other, with whom to tell", () => {
    const sum = builtSoFar(LINE, STAKED, [marked(20, "to-height")], NUMBER);
    const work = [{ fromM: 0, toM: 40, finishH: 1 }];
    const behind = behindNow(LINE, sum, { work, river: null, sizedForM: 105, nowH: 4 });
    expect(behindWords(behind, null, null, "metric")[0]).toBe(
      "Behind the build sequence at the slow pace: 0+000.0 to 0+020.0, 0+030.0 to 0+040.0. Tell the command post now.",
    );
  });

  it("takes the fall of the river from the gauge to the line into account", () => {
    const sum = builtSoFar(LINE, STAKED, [], NUMBER);
    const river = { levelAtH: (hour: number) => 103 + hour / 10, fromH: 0, toH: 20 };
    const behind = behindNow(LINE, sum, { work: [], river, sizedForM: 105.5, nowH: 0 });
    expect(behind.next).toMatchObject({ stretch: { fromM: 0 }, wetH: 5 });
  });
});
