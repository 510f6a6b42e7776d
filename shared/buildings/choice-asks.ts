import { CUBIC_YARD_M3 } from "../constants.ts";
import type { UnitSystem } from "../units.ts";
import type { ChoiceQuestion, More } from "./choice-types.ts";

const BAGS_MORE = 10_000;
const PEOPLE_MORE = 20;
const HOURS_MORE = 6;
/** A round amount of sand in either system, m3. */
const SAND_MORE: Readonly<Record<UnitSystem, number>> = { us: 100 * CUBIC_YARD_M3, metric: 100 };
/** Points of the curve between no bags and its end, the stock itself besides. */
const POINTS = 24;
/** The curve goes so far beyond today's stock. */
const BEYOND = 1.25;

/** Things more whose gain is worth knowing: each alone, and two that are often short together. */
export function moreToTry(system: UnitSystem): readonly More[] {
  const sandM3 = SAND_MORE[system];
  return [
    { bags: BAGS_MORE },
    { sandM3 },
    { people: PEOPLE_MORE },
    { people: 2 * PEOPLE_MORE, sandM3 },
    { hours: HOURS_MORE },
  ];
}

/** Numbers of bags at which the curve is counted, from none to beyond today's stock and to what all lines take. */
export function curveBags({ candidates, stock }: ChoiceQuestion): readonly number[] {
  const all = singles(candidates).reduce((sum, { bags }) => sum + bags, 0);
  const end = roundUp(
    stock.bags === null ? all : Math.max(stock.bags * BEYOND, Math.min(all, stock.bags * 2)),
  );
  const step = end / POINTS;
  const points = Array.from({ length: POINTS + 1 }, (_, index) => Math.round(index * step));
  return [...new Set(stock.bags === null ? points : [...points, stock.bags])].sort((a, b) => a - b);
}

function singles(candidates: ChoiceQuestion["candidates"]) {
  return candidates.filter(({ members }) => members.length === 1);
}

/** To the next 1, 2 or 5 of its size. */
function roundUp(value: number): number {
  if (!(value > 0)) return 1000;
  const size = 10 ** Math.floor(Math.log10(value));
  return ([1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].find((each) => each * size >= value) ?? 10) * size;
}
