import { isWhole, mustFixCount } from "../completeness.ts";
import type { SizedLine } from "../sizing-types.ts";
import { formatCount, type UnitSystem } from "../units.ts";
import { checkWords } from "./checks.ts";
import { bagsForWords, missingWords } from "./counted.ts";
import { levelDoubtShort } from "./level-doubt.ts";
import { mustFixWords } from "./must-fix.ts";
import { unitsOf } from "./units.ts";

type Compared = Pick<SizedLine, "name" | "totals" | "checks" | "levelDoubt">;

/** What was found against each line of the plan, a sentence each; never by totals that are not complete. */
export function against(
  found: readonly Compared[],
  drawn: readonly Compared[],
  system: UnitSystem,
): string[] {
  const gap = found.find((line) => !isWhole(line));
  if (gap && drawn.length > 0) return [notCompared(gap, "the plan's own lines", system)];
  const bags = found.reduce((sum, { totals }) => sum + totals.bags, 0);
  const faults = found.filter(hasMustFix);
  return drawn.map((line) => {
    if (!isWhole(line)) return notCompared(line, "what was found", system);
    const beside = [...faults, ...(hasMustFix(line) ? [line] : [])].map(faultWords);
    return `${differenceWords(bags, line)}${beside.length > 0 ? `; ${beside.join(", ")}` : ""}.`;
  });
}

function differenceWords(bags: number, { name, totals }: Compared): string {
  const saved = totals.bags - bags;
  if (saved === 0) return `As many bags as "${name}"`;
  const size = `${formatCount(Math.abs(saved))} bags ${saved < 0 ? "more" : "fewer"} than "${name}"`;
  if (totals.bags === 0) return `${size}, which needs none`;
  return `${size} (${Math.abs((100 * saved) / totals.bags).toFixed(0)} %)`;
}

function notCompared(
  { name, totals, levelDoubt }: Compared,
  other: string,
  system: UnitSystem,
): string {
  const why = levelDoubt?.countsUnknown
    ? levelDoubtShort(levelDoubt)
    : missingWords(totals, system);
  return `"${name}" is not compared with ${other}: ${why}.`;
}

function hasMustFix({ checks }: Compared): boolean {
  return mustFixCount(checks) > 0;
}

function faultWords({ name, checks }: Compared): string {
  return `"${name}" has ${mustFixWords(mustFixCount(checks))}`;
}

/** What must be fixed on a found line: the first of it, and how many. */
function faultsOf(line: Compared, system: UnitSystem): string {
  const count = mustFixCount(line.checks);
  const first = line.checks.find(({ severity }) => severity === "stop");
  if (!first) return "";
  return ` ${mustFixWords(count)}${count > 1 ? ", first" : ""}: ${checkWords(first, system).message}`;
}

/** What was found, in sentences for the person at the terminal. */
export function foundWords(
  found: readonly SizedLine[],
  drawn: readonly SizedLine[],
  system: UnitSystem,
): string[] {
  const { length, distance } = unitsOf(system);
  const each = found.map((line) => {
    const { name, totals } = line;
    const over =
      totals.lengthOverLimitM > 0.05
        ? `; ${distance(totals.lengthOverLimitM)} of it over the height limit`
        : "";
    return `${name}: ${bagsForWords(totals, system)}, ${distance(totals.builtLengthM)} to build, at most ${length(totals.greatestHeightM)} high${over}.${faultsOf(line, system)}`;
  });
  return [...each, ...against(found, drawn, system)];
}
