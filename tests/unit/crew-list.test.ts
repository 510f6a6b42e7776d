import { expect, it } from "vitest";
import { type CrewLine, crewList } from "../../shared/buildings/crew-list.ts";
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
