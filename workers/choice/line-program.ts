import type { ChoiceQuestion } from "../../shared/buildings/choice-types.ts";
import type { Candidate, RunsOut } from "../../shared/buildings/types.ts";
import { refusal } from "../../shared/failure.ts";
import { fitsAlone, hourLimits, type Workers } from "./hour-limits.ts";
import type { AtMost } from "./solver.ts";
import { UNITS_PER, unitsNeeded, unitsThere } from "./whole-units.ts";

/** What can be limited. */
export type Limited = Exclude<RunsOut, "nothing">;

/** A limit on the lines taken together. */
interface LineLimit extends AtMost {
  /** Null: a building is in one line at most. */
  readonly of: Exclude<Limited, "time"> | null;
}

/** The choice as a program in whole numbers: one column for each line that can be chosen at all. */
export interface LineProgram {
  /** In order of id, so that the order in which they were given decides nothing. */
  readonly lines: readonly Candidate[];
  /** In `weightUnit` thousandths. */
  readonly weights: readonly number[];
  readonly weightUnit: number;
  readonly bags: readonly number[];
  /** How many of its buildings must be ringed. */
  readonly mustDo: readonly number[];
  readonly limits: readonly LineLimit[];
}

const AMOUNTS = [
  { of: "bags", key: "bags" },
  { of: "sand", key: "sandM3" },
  { of: "sheet", key: "sheetM2" },
] as const;

/** Limits of hours that the solver has from the first; the others follow where it exceeds them. */
const MOST_HOURS_AT_FIRST = 20;

/**
 * @param freed what is taken as not limited; `time` frees the people too, because only hours limit them
 * @throws Refusal `choice/bad-figure`, `choice/same-id`
 */
export function lineProgram(
  question: ChoiceQuestion,
  freed: ReadonlySet<Limited> = new Set(),
): LineProgram {
  const { candidates, stock } = question;
  refuseUnfit(question);
  const [mustDo, mustNot] = [new Set(stock.mustDo), new Set(stock.mustNot)];
  const workers = workersOf(question, freed);
  const most = (key: (typeof AMOUNTS)[number]["key"], of: Limited): number =>
    stock[key] === null || freed.has(of) ? Infinity : unitsThere(stock[key], key);
  const lines = candidates
    .filter(({ members }) => !members.some((id) => mustNot.has(id)))
    .filter((line) => AMOUNTS.every(({ of, key }) => unitsNeeded(line[key], key) <= most(key, of)))
    .filter((line) => workers === null || fitsAlone(line, workers))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const amounts = AMOUNTS.map(({ of, key }) =>
    limitOf(
      of,
      lines.map((line) => unitsNeeded(line[key], key)),
      most(key, of),
    ),
  );
  const hours = workers === null ? [] : hourLimits(lines, workers);
  const step = Math.ceil(hours.length / MOST_HOURS_AT_FIRST);
  const times = hours.map((limit, index) => ({
    ...limitOf("people", limit.hours, limit.most),
    isSeldom: (hours.length - 1 - index) % step > 0,
  }));
  const weights = lines.map(({ weight }) => Math.round(weight * UNITS_PER.weight));
  const weightUnit = weights.reduce(greatestCommonDivisor, 0) || 1;
  return {
    lines,
    weights: weights.map((each) => each / weightUnit),
    weightUnit,
    bags: lines.map(({ bags }) => unitsNeeded(bags, "bags")),
    mustDo: lines.map(({ members }) => members.filter((id) => mustDo.has(id)).length),
    limits: [...amounts, ...times, ...oneLineEach(lines)].filter(canBeExceeded),
  };
}

/** Who works, with what is freed left out; null where hours are not limited. */
function workersOf(
  { workForce }: Pick<ChoiceQuestion, "workForce">,
  freed: ReadonlySet<Limited>,
): Workers | null {
  if (workForce === null || freed.has("time")) return null;
  return freed.has("people") ? { ...workForce, people: Infinity } : workForce;
}

function limitOf(of: LineLimit["of"], units: readonly number[], most: number): LineLimit {
  const columns = [...units.keys()].filter((column) => units[column]! > 0);
  return { of, columns, values: columns.map((column) => units[column]!), most };
}

function canBeExceeded({ values, most }: LineLimit): boolean {
  return most !== Infinity && values.reduce((sum, value) => sum + value, 0) > most;
}

function oneLineEach(lines: readonly Candidate[]): LineLimit[] {
  const linesOf = new Map<string, number[]>();
  lines.forEach(({ members }, column) => {
    for (const id of members) linesOf.set(id, [...(linesOf.get(id) ?? []), column]);
  });
  return [...linesOf.values()].map((columns) => ({
    of: null,
    columns,
    values: columns.map(() => 1),
    most: 1,
  }));
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function refuseUnfit({ candidates, stock, workForce }: ChoiceQuestion): void {
  const ids = new Set<string>();
  for (const { id, weight, bags, sandM3, sheetM2, personHours } of candidates) {
    if (ids.has(id)) throw refusal("choice/same-id", { id });
    ids.add(id);
    const bad = [weight, bags, sandM3, sheetM2, personHours].find((each) => !isAmount(each));
    if (bad !== undefined) throw refusal("choice/bad-figure", { lineId: id, came: bad });
  }
  const { people, atWorkShare, setUpH, moveHours, mostOnOneLine } = workForce ?? {};
  const stated = [stock.bags, stock.sandM3, stock.sheetM2, people, atWorkShare, setUpH];
  for (const each of [...stated, moveHours, mostOnOneLine]) {
    if (each !== undefined && each !== null && !isAmount(each)) {
      throw refusal("choice/bad-figure", { lineId: null, came: each });
    }
  }
}

function isAmount(figure: number): boolean {
  return Number.isFinite(figure) && figure >= 0;
}
