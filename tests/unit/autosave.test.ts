import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { failureOf, refusal } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import { autosaveFailure } from "../../src/document/autosave-failures.ts";
import {
  apply,
  history,
  hold,
  plan,
  release,
  startFrom,
  undo,
  undoNote,
} from "../../src/document/store.ts";
import {
  latestOf,
  readJournal,
  STEPS_STORED,
  writeJournal,
} from "../../src/document/stored-plan.ts";
import { writeBehind } from "../../src/document/write-behind.ts";
import { said } from "../helpers/said.ts";

const DELAY_MS = 250;
const RETRY_MS = 5000;

describe("writing behind", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  function recorder(write: (value: { n: number }) => Promise<void> = () => Promise.resolve()) {
    const written: number[] = [];
    const failed: number[] = [];
    let settled = 0;
    const writer = writeBehind<{ n: number }>({
      async write(value) {
        await write(value);
        written.push(value.n);
      },
      retryMs: RETRY_MS,
      onWritten: () => {
        settled += 1;
      },
      onFailure: (_thrown, { n }) => failed.push(n),
    });
    return { writer, written, failed, settled: () => settled };
  }

  it("writes an edit at once", async () => {
    const { writer, written, settled } = recorder();
    writer.put({ n: 1 }, 0);
    await vi.advanceTimersByTimeAsync(0);
    expect(written).toEqual([1]);
    expect(writer.waiting()).toBeNull();
    expect(settled()).toBe(1);
  });

  it("writes the latest value of a drag within the delay, however fast values come", async () => {
    const { writer, written } = recorder();
    for (let n = 0; n < 100; n++) {
      writer.put({ n }, DELAY_MS);
      await vi.advanceTimersByTimeAsync(16);
    }
    await vi.advanceTimersByTimeAsync(DELAY_MS);
    expect(written.at(-1)).toBe(99);
    expect(written.length).toBeGreaterThanOrEqual(6);
    expect(written.length).toBeLessThanOrEqual(8);
    expect(writer.waiting()).toBeNull();
  });

  it("does not wait for a drag's delay once hurried, nor once an edit follows", async () => {
    const { writer, written } = recorder();
    writer.put({ n: 1 }, DELAY_MS);
    writer.hurry();
    await vi.advanceTimersByTimeAsync(0);
    writer.put({ n: 2 }, DELAY_MS);
    writer.put({ n: 3 }, 0);
    await vi.advanceTimersByTimeAsync(0);
    expect(written).toEqual([1, 3]);
    await vi.advanceTimersByTimeAsync(2 * DELAY_MS);
    expect(written).toEqual([1, 3]);
  });

  it("writes one at a time, and what came meanwhile right after it", async () => {
    let running = 0;
    const slow = async () => {
      running += 1;
      expect(running).toBe(1);
      await new Promise((resolve) => setTimeout(resolve, 1000));
      running -= 1;
    };
    const { writer, written, settled } = recorder(slow);
    writer.put({ n: 1 }, 0);
    await vi.advanceTimersByTimeAsync(100);
    writer.put({ n: 2 }, 0);
    writer.put({ n: 3 }, 0);
    expect(writer.waiting()).toEqual({ n: 3 });
    await vi.advanceTimersByTimeAsync(1000);
    expect(settled()).toBe(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(written).toEqual([1, 3]);
    expect(settled()).toBe(1);
  });

  it("keeps a value that could not be written, and tries again by itself until it can", async () => {
    let full = true;
    const { writer, written, failed, settled } = recorder(() =>
      full ? Promise.reject(new DOMException("", "QuotaExceededError")) : Promise.resolve(),
    );
    writer.put({ n: 1 }, 0);
    await vi.advanceTimersByTimeAsync(0);
    writer.put({ n: 2 }, 0);
    await vi.advanceTimersByTimeAsync(0);
    expect(failed).toEqual([1, 2]);
    expect(writer.waiting()).toEqual({ n: 2 });
    full = false;
    await vi.advanceTimersByTimeAsync(RETRY_MS);
    expect(written).toEqual([2]);
    expect(settled()).toBe(1);
    expect(writer.waiting()).toBeNull();
  });
});

describe("a step while the one before it is being written", () => {
  const entitle = (title: string, gesture?: string) =>
    apply({ note: title, gesture, change: (now) => ({ ...now, title }) });

  beforeEach(() => {
    startFrom({ plan: EMPTY_PLAN });
  });
  afterEach(release);

  it("waits, and becomes the plan once that is done, in its order", () => {
    entitle("One");
    hold();
    expect(entitle("Two").ok).toBe(true);
    entitle("Three");
    undo();
    expect(plan.value.title).toBe("One");
    expect(undoNote.value).toBe("One");
    release();
    expect(plan.value.title).toBe("Two");
    expect(history.value.done.map(({ note }) => note)).toEqual(["One", "Two"]);
    expect(history.value.undone.map(({ note }) => note)).toEqual(["Three"]);
  });

  it("is refused at once when it is not valid", () => {
    hold();
    expect(apply({ note: "", change: (now) => ({ ...now, title: 7 as never }) }).ok).toBe(false);
    release();
    expect(history.value.done).toEqual([]);
  });

  it("does not wait when it goes on with a drag that is on screen", () => {
    entitle("a", "drag");
    hold();
    entitle("ab", "drag");
    expect(plan.value.title).toBe("ab");
    entitle("Other");
    entitle("Other still", "drag");
    expect(plan.value.title).toBe("ab");
  });
});

describe("what was kept", () => {
  const plain: Plan = { ...EMPTY_PLAN, title: "Kept" };
  const edited: Plan = { ...plain, title: "Edited" };
  const step = { note: "Rename", before: EMPTY_PLAN, after: plain };
  const history = { plan: plain, done: [step], undone: [] };
  const kept = { revision: 7, keptAt: 0, text: writePlanFile(plain), history };
  const journal = (revision: number, steps = 2) => ({
    ...{ revision, steps },
    text: writePlanFile(edited),
  });

  it("is nothing when there is nothing", () => {
    expect(latestOf(null, null)).toBeNull();
  });

  it("is the plan with its steps", () => {
    expect(latestOf(kept, null)).toEqual({ ok: true, value: history });
  });

  it("is the journal's plan as one more step when the journal is later", () => {
    expect(latestOf(kept, journal(8))).toEqual({
      ok: true,
      value: {
        plan: edited,
        done: [step, { note: "Last change before the page closed", before: plain, after: edited }],
        undone: [],
      },
    });
    expect(latestOf(null, journal(1))).toEqual({
      ok: true,
      value: { plan: edited, done: [], undone: [] },
    });
  });

  it("is the journal's plan as the end of the step that was still being made", () => {
    expect(latestOf(kept, journal(8, 1))).toEqual({
      ok: true,
      value: { plan: edited, done: [{ ...step, after: edited }], undone: [] },
    });
  });

  it("is the kept plan when the journal is not later, or is damaged", () => {
    expect(latestOf(kept, journal(7))).toEqual({ ok: true, value: history });
    expect(latestOf(kept, { revision: 9, steps: 1, text: "{" })).toEqual({
      ok: true,
      value: history,
    });
  });

  it("is without its steps when one of them does not fit this version", () => {
    const broken = { ...step, before: { ...plain, practice: {} } as Plan };
    expect(latestOf({ ...kept, history: { ...history, done: [broken] } }, null)).toEqual({
      ok: true,
      value: { plan: plain, done: [], undone: [] },
    });
  });

  it("is read from its file when its value does not fit this version", () => {
    const other = { ...history, plan: { ...plain, practice: {} } as Plan };
    expect(latestOf({ ...kept, history: other }, null)).toEqual({
      ok: true,
      value: { plan: plain, done: [], undone: [] },
    });
  });

  it("is refused when neither can be read", () => {
    const other = { ...history, plan: { ...plain, practice: {} } as Plan };
    const newer = kept.text.replace('"version": 1', '"version": 2');
    expect(latestOf({ ...kept, text: newer, history: other }, null)).toMatchObject({
      ok: false,
      failure: { code: "plan/newer-version" },
    });
  });

  it("comes back from a journal's text, and a damaged text is none", () => {
    expect(readJournal(writeJournal(journal(12)))).toEqual(journal(12));
    expect(readJournal(null)).toBeNull();
    expect(readJournal("")).toBeNull();
    expect(readJournal("12\n{}")).toEqual({ revision: 12, steps: STEPS_STORED, text: "{}" });
    expect(readJournal("twelve\n{}")).toBeNull();
  });
});

describe("a browser that does not keep the plan", () => {
  it.each([
    [new DOMException("", "QuotaExceededError"), "autosave/full"],
    [new DOMException("denied", "SecurityError"), "autosave/refused"],
    ["a text", "autosave/refused"],
    [refusal("autosave/unreadable", { why: failureOf("plan/empty") }), "autosave/unreadable"],
  ])("with %s is told as %s, with what to do", (thrown, code) => {
    const failure = autosaveFailure(thrown);
    expect(failure.code).toBe(code);
    expect(said(failure).remedy).not.toBe("");
  });
});
