import type { Highs, ModelData } from "highs";
import { loadPart } from "../../shared/load-part.ts";

/** A sum of columns that may not be more than `most`; all whole numbers, none 0. */
export interface AtMost {
  readonly columns: readonly number[];
  readonly values: readonly number[];
  readonly most: number;
  /** Given to the solver only once what it takes exceeds it: many like it follow from others. */
  readonly isSeldom?: boolean;
}

/** Which of some columns to take so that the sum of `worth` is greatest, within limits. */
export interface YesNoProgram {
  /** Whole numbers, one for each column. */
  readonly worth: readonly number[];
  readonly limits: readonly AtMost[];
}

export interface Solved {
  readonly taken: readonly boolean[];
  /** No other has a greater sum of `worth`. */
  readonly bound: number;
}

let loading: Promise<Highs> | null = null;

/** @throws Refusal `program/part-missing` */
async function highs(): Promise<Highs> {
  loading ??= loadPart("the solver for the choice of buildings", async () => {
    const { default: load } = await import("highs");
    return load();
  });
  try {
    return await loading;
  } catch (thrown) {
    loading = null;
    throw thrown;
  }
}

/** Room for a bound that is a whole number but for the solver's arithmetic. */
const BOUND_ROOM = 1e-5;
/** Solved again at most so often, before the program gives up. */
const MOST_ROUNDS = 200;
/** Limits of which the solver hears at once when it exceeds more. */
const MOST_AT_ONCE = 2;

/**
 * Solves by HiGHS's branch and cut with both gaps at 0. HiGHS counts in floating point, to 1e-6: so what it takes is
 * added up again in whole numbers, and where it exceeds a limit that it was given that very set is forbidden and the
 * rest solved again. Its bound is rounded down to a whole number, which is allowed because every `worth` is whole.
 * @param start columns that keep all limits, from which it can only get better
 * @param seconds most seconds; after them the best so far is given with a bound that may be higher
 */
export async function solve(
  { worth, limits }: YesNoProgram,
  start: readonly boolean[],
  seconds: number,
): Promise<Solved> {
  if (worth.length === 0) return { taken: [], bound: 0 };
  const solver = await highs();
  const endsAt = performance.now() + 1000 * seconds;
  const given = limits.filter(({ isSeldom }) => !isSeldom);
  let bound = worth.reduce((all, each) => all + Math.max(0, each), 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const left = (endsAt - performance.now()) / 1000;
    if (round > 0 && left <= 0) break;
    const found = solveOnce(solver, worth, given, start, left);
    bound = Math.min(bound, found.bound);
    const taken = found.taken ?? start;
    const exceeded = limits.filter((limit) => excess(limit, taken) > 0);
    if (exceeded.length === 0) {
      const [now, before] = [sumOf(worth, taken), sumOf(worth, start)];
      return { taken: now >= before ? taken : start, bound: Math.max(bound, now, before) };
    }
    const unheard = exceeded.filter((limit) => !given.includes(limit));
    unheard.sort((a, b) => excess(b, taken) - excess(a, taken));
    if (unheard.length > 0) given.push(...unheard.slice(0, MOST_AT_ONCE));
    else given.push(forbidden(exceeded[0]!, taken));
  }
  return { taken: start, bound: Math.max(bound, sumOf(worth, start)) };
}

/** The sum of what is taken. */
export function sumOf(units: readonly number[], taken: readonly boolean[]): number {
  return units.reduce((sum, each, column) => sum + (taken[column] ? each : 0), 0);
}

function excess({ columns, values, most }: AtMost, taken: readonly boolean[]): number {
  return columns.reduce((sum, column, i) => sum + (taken[column] ? values[i]! : 0), -most);
}

/** Forbids what exceeds a limit: with all that contain it, where more can only exceed it more. */
function forbidden({ columns, values }: AtMost, taken: readonly boolean[]): AtMost {
  const used = columns.filter((column) => taken[column]);
  if (values.every((value) => value >= 0)) {
    return { columns: used, values: used.map(() => 1), most: used.length - 1 };
  }
  const signs = taken.map((isTaken) => (isTaken ? 1 : -1));
  return { columns: [...taken.keys()], values: signs, most: taken.filter(Boolean).length - 1 };
}

/**
 * Presolve is left out: on limits that each name most of the columns it takes ten times as long as all the rest.
 */
function solveOnce(
  solver: Highs,
  worth: readonly number[],
  limits: readonly AtMost[],
  start: readonly boolean[],
  seconds: number,
): { readonly taken: boolean[] | null; readonly bound: number } {
  const { optimal, timeLimit } = solver.constants.modelStatus;
  return solver.withModel(modelOf(solver, worth, limits), (model) => {
    model.options.set({
      output_flag: false,
      presolve: "off",
      mip_rel_gap: 0,
      mip_abs_gap: 0,
      time_limit: Math.max(0.01, seconds),
    });
    model.setSolution({ colValue: start.map(Number) });
    model.run();
    const status = model.getModelStatus();
    if (status !== optimal && status !== timeLimit) {
      throw new Error(`The solver ended with status ${status}.`);
    }
    const values = model.getSolution().colValue;
    const taken = Array.from(worth, (_, column) => (values[column] ?? 0) > 0.5);
    const stated = Number(model.info.get("mip_dual_bound"));
    const bound = Number.isFinite(stated) ? Math.floor(stated + BOUND_ROOM) : Infinity;
    return { taken: values.length === worth.length ? taken : null, bound };
  });
}

function modelOf(solver: Highs, worth: readonly number[], limits: readonly AtMost[]): ModelData {
  const count = worth.length;
  const starts = [0];
  for (const { columns } of limits) starts.push(starts.at(-1)! + columns.length);
  return {
    numCols: count,
    numRows: limits.length,
    sense: solver.constants.objectiveSense.maximize,
    colCost: worth,
    colLower: new Float64Array(count),
    colUpper: new Float64Array(count).fill(1),
    rowLower: new Float64Array(limits.length).fill(-solver.infinity),
    rowUpper: limits.map(({ most }) => most),
    integrality: new Int32Array(count).fill(solver.constants.variableType.integer),
    matrix: {
      format: "csr",
      numRows: limits.length,
      numCols: count,
      starts,
      indices: limits.flatMap(({ columns }) => columns),
      values: limits.flatMap(({ values }) => values),
    },
  };
}
