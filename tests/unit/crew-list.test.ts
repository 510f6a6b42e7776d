import { expect, it } from "vitest";
import { type CrewLine, crewList, lateLines } from "../../shared/buildings/crew-list.ts";
import { hourLimits } from "../../workers/choice/hour-limits.ts";
import { seededRandom } from "../helpers/seeded-random.ts";

const WORK = { atWork: 90, mostOnOneLine: 60, setUpH: 2, moveHours: 0 };
const line = (id: string, personHours: number, closeByH: number | null): CrewLine => ({
  ...{ id, personHours, closeByH },
});

it("divides people into crews as equal as can be, each line to the crew that is free first, the first deadline first", () => {
  const crews = crewList([line("c", 45, 20), line("a", 90, 5), line("b", 45, 9)], WORK);
  expect(crews).toEqual([
    { people: 45, turns: [{ id: "a", beginsH: 2, doneH: 4, latestH: 3, lateH: 0 }] },
    {
      people: 45,
      turns: [
        { id: "b", beginsH: 2, doneH: 3, latestH: 8, lateH: 0 },
        { id: "c", beginsH: 3, doneH: 4, latestH: 19, lateH: 0 },
      ],
    },
  ]);
});

it("says how late a line is, and that it is not known without a deadline", () => {
  const [crew] = crewList([line("a", 60, 2.5), line("b", 60, null)], { ...WORK, atWork: 60 });
  expect(crew!.turns.map(({ lateH }) => lateH)).toEqual([0.5, null]);
});

it.each([
  [
    "crews as full as can be",
    { ...WORK, atWork: 70 },
    [line("a", 300, 7), line("b", 100, 20)],
    [60, 10],
  ],
  [
    "more crews",
    { ...WORK, atWork: 60, mostOnOneLine: 60, setUpH: 0, moveHours: 120 },
    [line("a", 60, 2), line("b", 60, 2)],
    [30, 30],
  ],
])("takes %s where equal crews, as few as can be, would be late", (_, work, lines, people) => {
  const crews = crewList(lines, work);
  expect(crews.map((each) => each.people)).toEqual(people);
  expect(lateLines(crews)).toEqual([]);
});

it("is late with no more lines than equal crews by deadline, as few as can be, and on fewer lists", () => {
  const chance = seededRandom(7);
  const late = { plain: 0, taken: 0 };
  for (let round = 0; round < 300; round++) {
    const lines = Array.from({ length: 2 + Math.floor(chance() * 12) }, (_, k) =>
      line(`l${k}`, 20 + chance() * 400, 4 + chance() * 60),
    );
    const atWork = 20 + Math.floor(chance() * 160);
    const taken = lateLines(crewList(lines, { ...WORK, atWork })).length;
    const plain = plainLate(lines, atWork);
    expect(taken).toBeLessThanOrEqual(plain);
    late.plain += plain > 0 ? 1 : 0;
    late.taken += taken > 0 ? 1 : 0;
  }
  expect(late.taken).toBeLessThan(late.plain);
});

/** People with whom the choice would take all lines, divided freely, hour by hour; null where it would not. */
function takenByChoice(chance: () => number, lines: readonly CrewLine[], most: number) {
  const people = 3 + Math.floor(chance() * 3 * most);
  const workers = { ...WORK, people, mostOnOneLine: most, atWorkShare: 1, untilH: null };
  const fits = hourLimits(
    lines.map((each) => ({ ...each, closedByH: each.closeByH })),
    workers,
  ).every((limit) => limit.hours.reduce((sum, each) => sum + each, 0) <= limit.most);
  const alone = Math.min(people, most);
  const each = lines.every((line) => line.personHours <= (line.closeByH! - WORK.setUpH) * alone);
  return fits && each ? { ...WORK, atWork: people, mostOnOneLine: most } : null;
}

it("is late on no list of the choice that any crews could build in time: the same as by brute force", () => {
  const chance = seededRandom(11);
  const late = { choices: 0, listed: 0, byAny: 0 };
  while (late.choices < 250) {
    const lines = Array.from({ length: 2 + Math.floor(chance() * 4) }, (_, k) =>
      line(`l${k}`, 2 + chance() * 40, 4 + chance() * 20),
    );
    const work = takenByChoice(chance, lines, 6);
    if (!work) continue;
    late.choices += 1;
    if (lateLines(crewList(lines, work)).length === 0) continue;
    late.listed += 1;
    if (!isInTimeByAny(lines, work)) late.byAny += 1;
  }
  expect(late.byAny).toBeGreaterThan(0);
  expect(late.listed).toBe(late.byAny);
});

/** Brute force: every division of the people into crews, every way to give them the lines. */
function isInTimeByAny(lines: readonly CrewLine[], work: typeof WORK): boolean {
  const byDeadline = [...lines].sort((a, b) => a.closeByH! - b.closeByH!);
  const give = (crews: readonly { people: number; freeH: number }[], next: number): boolean => {
    const now = byDeadline[next];
    if (!now) return true;
    return crews.some(({ people, freeH }, k) => {
      const doneH = freeH + now.personHours / people;
      if (doneH > now.closeByH! + 1e-6) return false;
      return give(crews.with(k, { people, freeH: doneH }), next + 1);
    });
  };
  const divide = (left: number, most: number, crews: number[]): boolean => {
    const start = crews.map((people) => ({ people, freeH: work.setUpH }));
    if (crews.length > 0 && give(start, 0)) return true;
    if (crews.length === lines.length) return false;
    for (let people = Math.min(left, most); people > 0; people--) {
      if (divide(left - people, people, [...crews, people])) return true;
    }
    return false;
  };
  return divide(work.atWork, work.mostOnOneLine, []);
}

/** Lines that equal crews, as few as can be, close late. */
function plainLate(lines: readonly CrewLine[], atWork: number): number {
  const count = Math.min(Math.ceil(atWork / WORK.mostOnOneLine), lines.length);
  const inCrews = Math.min(atWork, count * WORK.mostOnOneLine);
  const sizes = Array.from({ length: count }, (_, k) =>
    Math.floor((inCrews + count - 1 - k) / count),
  );
  const freeH = sizes.map(() => WORK.setUpH);
  let late = 0;
  for (const { personHours, closeByH } of [...lines].sort((a, b) => a.closeByH! - b.closeByH!)) {
    const crew = freeH.indexOf(Math.min(...freeH));
    freeH[crew]! += personHours / sizes[crew]!;
    if (freeH[crew]! > closeByH! + 1e-6) late += 1;
  }
  return late;
}

it("counts walking and moving for each line after a crew's first", () => {
  const work = { ...WORK, atWork: 10, moveHours: 5 };
  const [crew] = crewList([line("a", 20, 9), line("b", 20, 10)], work);
  expect(crew!.turns.map(({ beginsH, doneH }) => [beginsH, doneH])).toEqual([
    [2, 4],
    [4.5, 6.5],
  ]);
});

it("has no crew without people, and never more crews than lines", () => {
  expect(crewList([line("a", 1, 1)], { ...WORK, atWork: null })).toEqual([]);
  expect(crewList([line("a", 1, 1)], { ...WORK, atWork: 500 })).toMatchObject([{ people: 60 }]);
});

it("gives every line to one crew, none before the crew is free, and all the people no more than there are", () => {
  const chance = seededRandom(5);
  for (let round = 0; round < 50; round++) {
    const lines = Array.from({ length: 1 + Math.floor(chance() * 12) }, (_, k) =>
      line(`l${k}`, chance() * 200, chance() < 0.2 ? null : chance() * 40),
    );
    const atWork = 1 + Math.floor(chance() * 200);
    const crews = crewList(lines, {
      ...WORK,
      atWork,
      mostOnOneLine: 1 + Math.floor(chance() * 60),
    });
    const ids = crews.flatMap(({ turns }) => turns.map(({ id }) => id));
    expect([...ids].sort()).toEqual(lines.map(({ id }) => id).sort());
    expect(crews.reduce((sum, { people }) => sum + people, 0)).toBeLessThanOrEqual(atWork);
    for (const { turns } of crews) {
      for (const [k, { beginsH }] of turns.entries()) {
        expect(beginsH).toBeGreaterThanOrEqual(k === 0 ? WORK.setUpH : turns[k - 1]!.doneH);
      }
    }
  }
});
