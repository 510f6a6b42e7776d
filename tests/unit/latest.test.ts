import { signal } from "@preact/signals";
import { afterEach, describe, expect, it, vi } from "vitest";
import { demoPlan } from "../../sample-terrain/plans.ts";
import { type Refusal, refusal } from "../../shared/failure.ts";
import { lagOf } from "../../src/live/lag.ts";
import { latest } from "../../src/live/latest.ts";
import { partsOf, SIZING, sameParts } from "../../src/live/parts.ts";

interface Call {
  readonly question: number;
  readonly signal: AbortSignal;
  readonly answer: (words: string) => void;
  readonly refuse: (reason: Refusal) => void;
}

function asked() {
  const calls: Call[] = [];
  const following = latest(
    (question: number, signal) =>
      new Promise<string>((answer, refuse) => calls.push({ question, signal, answer, refuse })),
  );
  return { calls, following };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

describe("the newest question", () => {
  it("is asked next, one at a time; those between are never asked; every answer says what it is of", async () => {
    const { calls, following } = asked();
    for (const question of [1, 2, 3]) following.want(question);
    expect(calls.map(({ question }) => question)).toEqual([1]);
    calls[0]!.answer("one");
    await turn();
    expect(following.answered.value).toEqual({ of: 1, answer: "one" });
    expect(calls.map(({ question }) => question)).toEqual([1, 3]);
    calls[1]!.answer("three");
    await turn();
    expect(following.answered.value).toEqual({ of: 3, answer: "three" });
    following.want(4);
    expect(calls.length).toBe(3);
  });

  it("dropped, is cancelled; its late answer is not shown, and the next is asked at once", async () => {
    const { calls, following } = asked();
    following.want(1);
    following.drop();
    expect(calls[0]!.signal.aborted).toBe(true);
    following.want(2);
    expect(calls.map(({ question }) => question)).toEqual([1, 2]);
    calls[0]!.answer("late");
    await turn();
    expect(following.answered.value).toBeNull();
    calls[1]!.answer("two");
    await turn();
    expect(following.answered.value).toEqual({ of: 2, answer: "two" });
  });

  it("cancelled, leaves the last answer and is not shown any more", async () => {
    const { calls, following } = asked();
    following.want(1);
    calls[0]!.answer("one");
    await turn();
    following.want(2);
    following.cancel();
    expect(calls[1]!.signal.aborted).toBe(true);
    calls[1]!.answer("late");
    await turn();
    expect(following.answered.value).toEqual({ of: 1, answer: "one" });
  });

  it("refused, takes the former answer away and says why; the next is still asked", async () => {
    const { calls, following } = asked();
    following.want(1);
    calls[0]!.answer("one");
    await turn();
    following.want(2);
    following.want(3);
    calls[1]!.refuse(refusal("line/no-length", { name: "A" }));
    await turn();
    expect(following.answered.value).toBeNull();
    expect(following.failed.value).toMatchObject({ of: 2, answer: { code: "line/no-length" } });
    calls[2]!.answer("three");
    await turn();
    expect(following.answered.value).toEqual({ of: 3, answer: "three" });
    expect(following.failed.value).toBeNull();
  });
});

describe("what the sizes of a plan follow from", () => {
  const plan = demoPlan(1);
  const isSame = (other: typeof plan) => sameParts(partsOf(plan, SIZING), partsOf(other, SIZING));

  it("is neither its title nor which line is chosen", () => {
    expect(isSame({ ...plan, title: "Other", chosenId: "b" })).toBe(true);
  });

  it("is water, lines, accuracy of the ground, and people", () => {
    expect(isSame({ ...plan, water: { ...plan.water } })).toBe(false);
    expect(isSame({ ...plan, alignments: [...plan.alignments] })).toBe(false);
    expect(isSame({ ...plan, ground: { ...plan.ground } })).toBe(false);
    expect(isSame({ ...plan, practice: { ...plan.practice } })).toBe(false);
  });
});

describe("a lag", () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it("is only where no answer comes for a moment, and ends with the answer that is of now", () => {
    vi.useFakeTimers();
    const isCurrent = signal(true);
    const answer = signal(0);
    const lags = lagOf(isCurrent, answer);
    isCurrent.value = false;
    for (let i = 0; i < 20; i++) {
      vi.advanceTimersByTime(50);
      answer.value += 1;
    }
    expect(lags.value).toBe(false);
    vi.advanceTimersByTime(500);
    expect(lags.value).toBe(true);
    isCurrent.value = true;
    expect(lags.value).toBe(false);
  });
});
