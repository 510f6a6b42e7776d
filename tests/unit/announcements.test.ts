import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { announcementWords } from "../../shared/words/announcements.ts";
import { drawKeysWords } from "../../shared/words/draw-keys.ts";
import { apply, plan, startFrom } from "../../src/document/store.ts";
import { announced, keepAnnounced } from "../../src/live/announced.ts";
import { sizedFor, toSize } from "../../src/live/current.ts";
import { sized } from "../../src/live/results.ts";
import { flat, groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

vi.mock("../../src/engine.ts", () => ({ engine: {} }));

const around = { ...ring(rectangle(20, 15)), id: "a", name: "Drawn" };
const start = { ...planWith(100.5), alignments: [around], chosenId: "a" };
const line = (): SizedLine => size(plan.value, around, flat(100));
const none = () => 0;

/** Sizes the plan as it stands, as the engine does a moment after a change. */
function answer(isWhole: boolean): void {
  sized.value = new Map([["a", line()]]);
  sizedFor.value = { of: toSize.value, isWhole };
}

function setWater(elevationM: number): void {
  apply({
    note: "Move the water",
    change: (now) => ({ ...now, water: { ...now.water, by: "elevation", elevationM } }),
  });
}

let stop = () => {};
beforeEach(() => {
  vi.useFakeTimers();
  announced.value = "";
  startFrom({ plan: start });
  answer(true);
  stop = keepAnnounced();
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

describe("a change of the water", () => {
  it("is announced once, when it rests and is sized in full", () => {
    vi.runAllTimers();
    expect(announced.value).toBe("");
    const heard: string[] = [];
    const end = announced.subscribe((words) => words && heard.push(words));
    for (const elevationM of [100.6, 100.7, 100.8]) {
      setWater(elevationM);
      answer(false);
      vi.runAllTimers();
    }
    expect(heard).toEqual([]);
    answer(true);
    vi.runAllTimers();
    const bags = line().totals.bags.toLocaleString("en-US");
    expect(heard).toEqual([`Sized-for water elevation 330.71 ft. A: ${bags} bags.`]);
    end();
  });

  it("that is taken back before it rests is not", () => {
    const { elevationM } = plan.value.water;
    setWater(100.9);
    answer(true);
    setWater(elevationM);
    answer(true);
    vi.runAllTimers();
    expect(announced.value).toBe("");
  });
});

describe("the words of an announcement", () => {
  it("give no figure of water that nobody has given", () => {
    const water = { ...start.water, given: false, elevationM: 0 };
    const words = announcementWords({ kind: "water", water, chosen: null }, "us", none);
    expect(words).toBe("Sized-for water not known.");
  });

  const water = { ...start.water, by: "stage" as const, stageM: 32 * FOOT_M };
  const sizedLine = size(start, around, flat(100));

  it("say what must be fixed, and no number that is not known", () => {
    const chosen = { letter: "A", line: sizedLine };
    const news = { kind: "water", water, chosen } as const;
    expect(announcementWords(news, "us", () => 2)).toMatch(
      /^Sized-for stage 32\.0 ft\. A: [\d,]+ bags, 2 Must fix\.$/,
    );
    const notSized = { ...news, chosen: { letter: "A", line: null } };
    expect(announcementWords(notSized, "us", none)).toBe(
      "Sized-for stage 32.0 ft. A: bags not known.",
    );
  });

  it("compare what was found with what was drawn only where all of both is counted", () => {
    const larger = { ...size(start, ring(rectangle(40, 15)), flat(100)), id: "b" };
    const holed = groundOf((x) => (x > 15 ? Number.NaN : 100));
    const part = { ...size(start, ring(rectangle(20, 15)), holed), id: "b" };
    const found = (rival: SizedLine) =>
      announcementWords(
        {
          kind: "found",
          lines: [{ letter: "D", line: sizedLine }],
          rival: { letter: "A", line: rival },
        },
        "metric",
        none,
      );
    expect(found(larger)).toMatch(/^Found D: [\d,]+ bags, [\d,]+ fewer than A\.$/);
    expect(found(part)).toMatch(/^Found D: [\d,]+ bags\.$/);
  });
});

describe("the keys of drawing", () => {
  it("are told by what is drawn", () => {
    expect(drawKeysWords("ring", 1)).toMatch(/Shift\+Enter closes the ring.*1 corner set\.$/);
    expect(drawKeysWords("line", 2)).toMatch(/Shift\+Enter ends the line.*2 corners set\.$/);
    expect(drawKeysWords("place", 0)).not.toContain("Backspace");
  });
});
