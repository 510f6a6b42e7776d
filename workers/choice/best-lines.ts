import type { Candidate } from "../../shared/buildings/types.ts";
import type { LineProgram } from "./line-program.ts";
import { type AtMost, type Solved, solve, sumOf } from "./solver.ts";
import { UNITS_PER } from "./whole-units.ts";

/** The best lines of a program. */
export interface BestLines {
  readonly lines: readonly Candidate[];
  /** How many buildings that must be ringed are. */
  readonly mustDo: number;
  readonly weight: number;
  readonly buildings: number;
  /** No lines that ring as many of those that must be ringed have more weight. */
  readonly bestPossible: number;
  readonly isProved: boolean;
}

/**
 * The lines that ring most of the buildings that must be ringed; of those the ones with the most weight; of those the
 * ones with the fewest bags: three programs, each with the last one's value as a limit. All values are whole numbers,
 * so that one is kept exactly by the next. Where a line can change places with one of an earlier id and nothing
 * changes but the ids, the earlier is taken.
 * @param isFewestBags false: weight alone is wanted, and the third program is left out
 */
export async function bestLines(
  program: LineProgram,
  seconds: number,
  isFewestBags = true,
): Promise<BestLines> {
  const { lines, weights, mustDo } = program;
  const limits: AtMost[] = [...program.limits];
  const none = lines.map(() => false);
  const first = mustDo.some((count) => count > 0)
    ? await solve({ worth: mustDo, limits }, none, seconds)
    : { taken: none, bound: 0 };
  if (first.bound > 0) limits.push(atLeast(mustDo, sumOf(mustDo, first.taken)));
  const heaviest = await solve({ worth: weights, limits }, first.taken, seconds);
  const most = sumOf(weights, heaviest.taken);
  const taken = isFewestBags
    ? settled(program, await fewestBags(program, limits, heaviest, most, seconds))
    : heaviest.taken;
  const chosen = lines.filter((_, column) => taken[column]);
  const isProved = first.bound === sumOf(mustDo, taken) && heaviest.bound === most;
  const weightOf = (units: number) => (units * program.weightUnit) / UNITS_PER.weight;
  return {
    lines: chosen,
    mustDo: sumOf(mustDo, taken),
    weight: weightOf(most),
    buildings: chosen.reduce((sum, { members }) => sum + members.length, 0),
    bestPossible: weightOf(heaviest.bound),
    isProved,
  };
}

async function fewestBags(
  { bags, weights }: LineProgram,
  limits: readonly AtMost[],
  heaviest: Solved,
  most: number,
  seconds: number,
): Promise<readonly boolean[]> {
  const worth = bags.map((each) => -each);
  const kept = [...limits, atLeast(weights, most)];
  return (await solve({ worth, limits: kept }, heaviest.taken, seconds)).taken;
}

/** Lines of an earlier id in the place of others wherever all sums stay as they are or within their limits. */
function settled(
  { lines, weights, bags, mustDo, limits }: LineProgram,
  given: readonly boolean[],
): boolean[] {
  const taken = [...given];
  const rows = limits.map(({ columns, values, most }) => {
    const of = new Map(columns.map((column, i) => [column, values[i]!]));
    const used = columns.reduce((sum, column, i) => sum + (taken[column] ? values[i]! : 0), 0);
    return { of, used, most };
  });
  const kindOf = (column: number) => `${weights[column]} ${bags[column]} ${mustDo[column]}`;
  const alike = new Map<string, number[]>();
  for (const column of lines.keys()) {
    alike.set(kindOf(column), [...(alike.get(kindOf(column)) ?? []), column]);
  }
  for (let isMoving = true; isMoving; ) {
    isMoving = false;
    for (const columns of alike.values()) {
      for (const to of columns) {
        if (taken[to]) continue;
        const from = columns.find((each) => {
          if (each <= to || !taken[each]) return false;
          return rows.every(
            ({ of, used, most }) => used - (of.get(each) ?? 0) + (of.get(to) ?? 0) <= most,
          );
        });
        if (from === undefined) continue;
        for (const row of rows) row.used += (row.of.get(to) ?? 0) - (row.of.get(from) ?? 0);
        taken[from] = false;
        taken[to] = true;
        isMoving = true;
      }
    }
  }
  return taken;
}

function atLeast(units: readonly number[], least: number): AtMost {
  const columns = [...units.keys()].filter((column) => units[column]! > 0);
  return { columns, values: columns.map((column) => -units[column]!), most: -least };
}
