import { describe, expect, it } from "vitest";
import type { ChoiceQuestion } from "../../shared/buildings/choice-types.ts";
import type { Candidate } from "../../shared/buildings/types.ts";
import { makeEngine } from "../../workers/engine.ts";
import { CREW, canBeClosed, lineOf, NO_LIMIT } from "../helpers/choice-cases.ts";

const engine = makeEngine();

function question(candidates: Candidate[], rest: Partial<ChoiceQuestion> = {}): ChoiceQuestion {
  return { candidates, stock: NO_LIMIT, workForce: null, ...rest };
}

const choose = (asked: ChoiceQuestion) => engine.chooseLines({ question: asked });

describe("which lines to build", () => {
  it("leaves the line with most weight a bag, where two others fill the stock better", async () => {
    const lines = [
      lineOf("a", { weight: 6, bags: 5 }),
      lineOf("b", { weight: 5, bags: 5 }),
      lineOf("c", { weight: 10, bags: 10 }),
      lineOf("d", { weight: 7, bags: 6 }),
    ];
    const greedy = await choose(question(lines, { stock: { ...NO_LIMIT, bags: 10 } }));
    expect(greedy).toMatchObject({ chosen: ["a", "b"], weight: 11, bags: 10, isProved: true });
    const exact = await choose(question(lines, { stock: { ...NO_LIMIT, bags: 11 } }));
    expect(exact).toMatchObject({ chosen: ["a", "d"], weight: 13, bestPossible: 13 });
  });

  it("takes one ring round several where it takes less, and no building twice", async () => {
    const lines = [
      lineOf("a", { bags: 6 }),
      lineOf("b", { bags: 6 }),
      lineOf("c", { bags: 2 }),
      lineOf("ab", { members: ["a", "b"], weight: 2, bags: 9 }),
    ];
    const few = await choose(question(lines, { stock: { ...NO_LIMIT, bags: 11 } }));
    expect(few).toMatchObject({ chosen: ["ab", "c"], buildings: ["a", "b", "c"], bags: 11 });
    const many = await choose(question(lines));
    expect(many).toMatchObject({ chosen: ["ab", "c"], weight: 3, runsOutFirst: "nothing" });
  });

  it("takes the earlier id of two that are alike", async () => {
    const lines = ["c", "a", "b"].map((id) => lineOf(id, { bags: 4 }));
    const found = await choose(question(lines, { stock: { ...NO_LIMIT, bags: 9 } }));
    expect(found.chosen).toEqual(["a", "b"]);
  });

  it("adds up parts of a cubic meter without an error of its own", async () => {
    const lines = [lineOf("a", { sandM3: 0.1 }), lineOf("b", { sandM3: 0.2 })];
    const stock = { ...NO_LIMIT, sandM3: 0.3 };
    expect((await choose(question(lines, { stock }))).chosen).toEqual(["a", "b"]);
    const less = { ...NO_LIMIT, sandM3: 0.2989 };
    expect((await choose(question(lines, { stock: less }))).chosen).toEqual(["a"]);
  });

  it("rings what must be ringed first, though others weigh more, and never what must not", async () => {
    const lines = [
      lineOf("must", { weight: 1, bags: 8 }),
      lineOf("x", { weight: 5, bags: 4 }),
      lineOf("y", { weight: 5, bags: 4 }),
      lineOf("never", { weight: 9, bags: 1 }),
      lineOf("group", { members: ["x", "never"], weight: 14, bags: 1 }),
    ];
    const stock = { ...NO_LIMIT, bags: 10, mustDo: ["must"], mustNot: ["never"] };
    const found = await choose(question(lines, { stock }));
    expect(found).toMatchObject({ chosen: ["must"], mustDoLeft: [], mustDoNeeds: null });
  });

  it("says why what must be ringed is not, and what it needs", async () => {
    const lines = [
      lineOf("big", { bags: 30, sandM3: 3 }),
      lineOf("slow", { personHours: 100, closedByH: 3 }),
      lineOf("never"),
      lineOf("small", { bags: 4, sandM3: 1, personHours: 9, closedByH: 5 }),
    ];
    const mustDo = ["big", "slow", "never", "gone", "small"];
    const stock = { ...NO_LIMIT, bags: 20, mustDo, mustNot: ["never"] };
    const found = await choose(question(lines, { stock, workForce: CREW }));
    expect(found.chosen).toEqual(["small"]);
    expect(found.mustDoWhy).toEqual([
      { id: "big", why: "not-enough" },
      { id: "gone", why: "no-line" },
      { id: "never", why: "must-not" },
      { id: "slow", why: "too-late" },
    ]);
    expect(found.mustDoNeeds).toEqual({
      takes: { bags: 34, sandM3: 4, sheetM2: 0, personHours: 9, people: 6 },
      missing: { bags: 14, sandM3: 0, sheetM2: 0, people: 0 },
    });
  });

  it("refuses two lines of one id, and figures that are none", async () => {
    const twice = choose(question([lineOf("a"), lineOf("a")]));
    await expect(twice).rejects.toMatchObject({ code: "choice/same-id" });
    const none = choose(question([lineOf("a", { bags: Number.NaN })]));
    await expect(none).rejects.toMatchObject({ code: "choice/bad-figure" });
  });

  it("has nothing to choose from nothing", async () => {
    const found = await choose(question([]));
    expect(found).toMatchObject({ chosen: [], weight: 0, isProved: true, runsOutFirst: "nothing" });
  });
});

describe("people and time", () => {
  const early = lineOf("early", { personHours: 20, closedByH: 6 });
  const late = lineOf("late", { personHours: 30, closedByH: 12 });

  it("gives each hour at which a line must be closed its own limit", async () => {
    const both = await choose(question([early, late], { workForce: CREW }));
    expect(both).toMatchObject({ chosen: ["early", "late"], personHours: 50, peopleNeeded: 10 });
    const soon = { ...early, personHours: 21, weight: 0.5 };
    const one = await choose(question([soon, late], { workForce: CREW }));
    expect(one).toMatchObject({ chosen: ["late"], runsOutFirst: "people", shortOf: ["people"] });
  });

  it("says that time ran out where a line was too late to be chosen from, not where it is ruled out or ringed", async () => {
    const of = async (rest: Partial<ChoiceQuestion>) =>
      (await choose(question([early], { workForce: CREW, ...rest }))).runsOutFirst;
    expect(await of({ tooLate: ["late"] })).toBe("time");
    expect(await of({ tooLate: ["late"], stock: { ...NO_LIMIT, mustNot: ["late"] } })).toBe(
      "nothing",
    );
    expect(await of({ tooLate: ["early"] })).toBe("nothing");
  });

  it("counts moving for each line, and one hour for all where it comes sooner", async () => {
    const moving = { ...CREW, moveHours: 0.1 };
    expect((await choose(question([early, late], { workForce: moving }))).weight).toBe(1);
    const sooner = { ...CREW, untilH: 11 };
    expect((await choose(question([early, late], { workForce: sooner }))).weight).toBe(1);
  });

  it("never chooses a line too long for the most people on it, whatever the pool", async () => {
    const crowd = { ...CREW, people: 10_000, mostOnOneLine: 5 };
    const long = { ...early, personHours: 20.1 };
    const found = await choose(question([long], { workForce: crowd }));
    expect(found).toMatchObject({ chosen: [], runsOutFirst: "time", shortOf: ["time"] });
    expect((await choose(question([early], { workForce: crowd }))).chosen).toEqual(["early"]);
  });

  it("never counts on more people on one line than can work there once the others are closed", async () => {
    const crew = { ...CREW, people: 2, atWorkShare: 1, setUpH: 0, mostOnOneLine: 1 };
    const lines = [
      lineOf("a", { personHours: 1, closedByH: 1 }),
      lineOf("b", { personHours: 1, closedByH: 1 }),
      lineOf("c", { personHours: 2, closedByH: 2 }),
    ];
    expect(canBeClosed(lines, crew)).toBe(false);
    expect((await choose(question(lines, { workForce: crew }))).chosen).toEqual(["a", "b"]);
  });

  it("names the lines whose hours are not limited because nothing is known of their time", async () => {
    const open = lineOf("open", { personHours: 9999 });
    const found = await choose(question([early, open], { workForce: CREW }));
    expect(found).toMatchObject({ chosen: ["early", "open"], notTimed: ["open"] });
    expect((await choose(question([early]))).notTimed).toEqual(["early"]);
  });
});

describe("what runs out and what more would buy", () => {
  const lines = [1, 2, 3, 4].map((i) =>
    lineOf(`b${i}`, { bags: 10 * i, sandM3: 2 * i, personHours: i, closedByH: 4 }),
  );
  const stock = { ...NO_LIMIT, bags: 35, sandM3: 100 };
  const asked = question(lines, { stock, workForce: { ...CREW, people: 100 } });

  it("names what alone lets more be ringed, and what is used most where only two together do", async () => {
    expect(await choose(asked)).toMatchObject({
      weight: 2,
      runsOutFirst: "bags",
      shortOf: ["bags"],
    });
    const two = { ...asked, stock: { ...NO_LIMIT, bags: 35, sandM3: 6 } };
    expect(await choose(two)).toMatchObject({ weight: 2, runsOutFirst: "sand", shortOf: [] });
  });

  it("solves again for each, and says what is short where it buys nothing", async () => {
    const more = [
      { bags: 25 },
      { sandM3: 5 },
      { people: 20 },
      { hours: 6 },
      { bags: 65, hours: 1 },
    ];
    const bought = await engine.moreBuys({ question: asked, more });
    expect(bought.map(({ weight }) => weight)).toEqual([1, 0, 0, 0, 2]);
    expect(bought.map(({ runsOutFirst }) => runsOutFirst)).toEqual([
      null,
      "bags",
      "bags",
      "bags",
      null,
    ]);
    expect(bought.map((each) => each.more)).toEqual(more);
  });

  it("draws buildings against bags, today and with all else to match", async () => {
    const limited = { ...asked, stock: { ...stock, sandM3: 6 } };
    const curve = await engine.bagCurve({ question: limited, bags: [0, 10, 30, 60, 100, 500] });
    expect(curve.today.map(({ buildings }) => buildings)).toEqual([0, 1, 2, 2, 2, 2]);
    expect(curve.matched.map(({ buildings }) => buildings)).toEqual([0, 1, 2, 3, 4, 4]);
    expect(curve.toMatch).toMatchObject({ bags: 30, sandM3: 6 });
    expect(curve.all).toEqual({ weight: 4, buildings: 4, mustDo: 0, isProved: true });
  });

  it("stops between two solves", async () => {
    const stop = new AbortController();
    const onProgress = () => stop.abort();
    const call = engine.bagCurve(
      { question: asked, bags: [1, 2] },
      { onProgress, signal: stop.signal },
    );
    await expect(call).rejects.toMatchObject({ code: "cancelled" });
  });
});
