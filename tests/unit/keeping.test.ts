import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { Refusal } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import { keepingFailure } from "../../src/document/keeping-failures.ts";
import { latestOf, readJournal, writeJournal } from "../../src/document/kept-plan.ts";
import { writeBehind } from "../../src/document/write-behind.ts";

const DELAY_MS = 250;

describe("writing behind", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  function recorder(write: (value: { n: number }) => Promise<void> = () => Promise.resolve()) {
    const written: number[] = [];
    const failures: unknown[] = [];
    const writer = writeBehind<{ n: number }>(
      async (value) => {
        await write(value);
        written.push(value.n);
      },
      DELAY_MS,
      (thrown) => failures.push(thrown),
    );
    return { writer, written, failures };
  }

  it("writes the latest value within the delay, however fast values come", async () => {
    const { writer, written } = recorder();
    for (let n = 0; n < 100; n++) {
      writer.put({ n });
      await vi.advanceTimersByTimeAsync(16);
    }
    await vi.advanceTimersByTimeAsync(DELAY_MS);
    expect(written.at(-1)).toBe(99);
    expect(written.length).toBeGreaterThanOrEqual(6);
    expect(written.length).toBeLessThanOrEqual(8);
    expect(writer.waiting()).toBeNull();
  });

  it("writes one at a time, and what came meanwhile after it", async () => {
    let running = 0;
    const slow = async () => {
      running += 1;
      expect(running).toBe(1);
      await new Promise((resolve) => setTimeout(resolve, 1000));
      running -= 1;
    };
    const { writer, written } = recorder(slow);
    writer.put({ n: 1 });
    await vi.advanceTimersByTimeAsync(DELAY_MS + 100);
    writer.put({ n: 2 });
    writer.put({ n: 3 });
    expect(writer.waiting()).toEqual({ n: 3 });
    await vi.advanceTimersByTimeAsync(3000);
    expect(written).toEqual([1, 3]);
  });

  it("writes at once when flushed, and waits for a write that runs", async () => {
    const { writer, written } = recorder();
    writer.put({ n: 1 });
    await writer.flush();
    expect(written).toEqual([1]);
    writer.put({ n: 2 });
    const first = writer.flush();
    writer.put({ n: 3 });
    await Promise.all([first, writer.flush()]);
    expect(written.at(-1)).toBe(3);
    expect(writer.waiting()).toBeNull();
  });

  it("tells of a row of failures once, keeps the value, and goes on with the next", async () => {
    let full = true;
    const { writer, written, failures } = recorder(() =>
      full ? Promise.reject(new DOMException("", "QuotaExceededError")) : Promise.resolve(),
    );
    writer.put({ n: 1 });
    await vi.advanceTimersByTimeAsync(DELAY_MS);
    writer.put({ n: 2 });
    await vi.advanceTimersByTimeAsync(DELAY_MS);
    expect(failures.length).toBe(1);
    expect(writer.waiting()).toEqual({ n: 2 });
    full = false;
    await writer.flush();
    expect(written).toEqual([2]);
    full = true;
    writer.put({ n: 3 });
    await vi.advanceTimersByTimeAsync(DELAY_MS);
    expect(failures.length).toBe(2);
  });
});

describe("what was kept", () => {
  const plain: Plan = { ...EMPTY_PLAN, title: "Kept" };
  const edited: Plan = { ...plain, title: "Edited" };
  const step = { note: "Rename", before: EMPTY_PLAN, after: plain };
  const history = { plan: plain, done: [step], undone: [] };
  const kept = { revision: 7, keptAt: 0, text: writePlanFile(plain), history };
  const journal = (revision: number) => ({ revision, text: writePlanFile(edited) });

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

  it("is the kept plan when the journal is not later, or is damaged", () => {
    expect(latestOf(kept, journal(7))).toEqual({ ok: true, value: history });
    expect(latestOf(kept, { revision: 9, text: "{" })).toEqual({ ok: true, value: history });
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
    expect(readJournal("twelve\n{}")).toBeNull();
  });
});

describe("a browser that does not keep the plan", () => {
  it.each([
    [new DOMException("", "QuotaExceededError"), "keep/full"],
    [new DOMException("denied", "SecurityError"), "keep/refused"],
    ["a text", "keep/refused"],
    [new Refusal("keep/unreadable", "m", "r"), "keep/unreadable"],
  ])("with %s is told as %s, with what to do", (thrown, code) => {
    const failure = keepingFailure(thrown);
    expect(failure.code).toBe(code);
    expect(failure.remedy).not.toBe("");
  });
});
