import { describe, expect, it } from "vitest";
import { checksAtStake } from "../../shared/field/at-stake.ts";
import { stakedLine } from "../../shared/field/stakes.ts";
import type { LevelDoubt } from "../../shared/level-doubt.ts";
import type { SizedLine, Station } from "../../shared/sizing-types.ts";
import { CAUTIONS, cautionsAt, watchSigns } from "../../shared/words/cautions.ts";
import { fieldFacts, noHeightWords } from "../../shared/words/field.ts";
import { LEAVE_NOT_SET_ASK, WHAT_SETS_LEAVE } from "../../shared/words/field-leave.ts";
import { flat, groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

describe("the cautions in the field", () => {
  it("stand once each, by the view where the decision is, the fatal ones first", () => {
    const said = (["leave", "watch", "build"] as const).flatMap(cautionsAt);
    expect(new Set(said).size).toBe(said.length);
    const elsewhere = CAUTIONS.filter((caution) => !said.includes(caution));
    expect(elsewhere.map(({ text }) => text)).toEqual([
      expect.stringMatching(/^Leave in time/),
      expect.stringMatching(/^A boil/),
    ]);
    expect(LEAVE_NOT_SET_ASK + WHAT_SETS_LEAVE).toMatch(/exit road and the time people need/);
    expect(watchSigns("us")[0]!.act).toContain("Never plug or cap it");
    const firstAt = (at: "leave" | "watch" | "build") => cautionsAt(at)[0]!.text;
    expect(firstAt("leave")).toMatch(/^Gas and power off/);
    expect(firstAt("watch")).toMatch(/^Keep out of moving water/);
    expect(firstAt("build")).toMatch(/^Call for utility locates/);
  });

  it("of pumps stand with those who run them", () => {
    const atWatch = cautionsAt("watch")
      .map(({ text }) => text)
      .join(" ");
    expect(atWatch).toMatch(/ground-fault.*exhaust/);
    expect(atWatch).toMatch(/No one alone\. Life jackets/);
  });
});

describe("a stake that has no height", () => {
  const around = { ...ring(rectangle(20, 15)), id: "a", name: "Drawn" };
  const plan = planWith(100.5, { alignments: [around] });
  const sized = size(plan, around, flat(100));
  const factsOf = (line: Pick<SizedLine, "walk" | "reaches" | "levelDoubt">, station: Station) =>
    fieldFacts({ line, station, stretch: null, plan, system: "us" }).map(({ name }) => name);
  const station = sized.stations[0]!;

  it("says so and gives no figure where water and ground do not belong together, high or low", () => {
    for (const greatestHeightM of [-250, 250]) {
      const line = { ...sized, levelDoubt: { countsUnknown: true } as LevelDoubt };
      const at = { ...station, greatestHeightM };
      expect(noHeightWords(line, at)).toMatch(/not known.*Build nothing/);
      expect(factsOf(line, at)).toEqual([]);
    }
  });

  it("gives the top of levee alone where nothing is built", () => {
    const at = { ...station, greatestHeightM: -0.2 };
    expect(noHeightWords(sized, at)).toMatch(/^Nothing to build/);
    expect(factsOf(sized, at)).toEqual(["Top of levee"]);
  });

  it("says that the height is not known over a hole in the data", () => {
    expect(noHeightWords(sized, { greatestHeightM: null })).toMatch(/not known/);
    expect(noHeightWords(sized, station)).toBeNull();
  });
});

it("of what must be fixed, names that of the place before that of the whole line", () => {
  const around = { ...ring(rectangle(20, 15)), id: "a", name: "Drawn" };
  const ground = groundOf((x, y) => (x > 5 && y > 0 ? Number.NaN : 100));
  const sized = size(planWith(100.5, { alignments: [around] }), around, ground);
  const staked = stakedLine(sized);
  const index = staked.stakes.findIndex(({ greatestHeightM }) => greatestHeightM === null);
  const { mustFix } = checksAtStake(sized, sized.checks, staked, index);
  const areOfWhole = mustFix.map(({ where }) => where === null);
  expect(new Set(areOfWhole)).toEqual(new Set([false, true]));
  expect(areOfWhole).toEqual(areOfWhole.toSorted());
});
