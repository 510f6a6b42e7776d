import type { Where } from "../checks/where.ts";
import type { Check } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";
import { capital } from "./capital.ts";
import { sortedChecks } from "./check-list.ts";
import { checkBrief, checkWords } from "./checks.ts";
import { hourWords } from "./clock.ts";
import { unitsOf } from "./units.ts";

/** What must be fixed on a line, as the band of a page says it. */
export interface MustFixBand {
  readonly count: number;
  /** Each in as few words as every page has room for. */
  readonly named: readonly string[];
  /** `and 9 more on other pages.`; null where all are named. */
  readonly rest: string | null;
}

/** A part of a line, metres of chainage. */
export interface LinePart {
  readonly fromM: number;
  readonly toM: number;
}

/** Up to so many are all named on every page. */
const FEW = 4;

/**
 * What must be fixed: on a page of a part of the line that part's own first, then what is about the whole line, and how
 * many others there are; on other pages the first few.
 * @param part the part of the line that the page is for; null for all of it
 */
export function mustFixBand(
  checks: readonly Check[],
  part: LinePart | null,
  system: UnitSystem,
): MustFixBand {
  const all = sortedChecks(checks).filter(({ severity }) => severity === "stop");
  const ofPart = part ? all.filter(({ where }) => isOn(where, part)) : [];
  const ofLine = all.filter(({ where }) => isOfLine(where));
  const others = all.filter((check) => !ofPart.includes(check) && !ofLine.includes(check));
  const ordered = [...ofPart, ...ofLine, ...others];
  const most = part ? Math.max(FEW, ofPart.length + ofLine.length) : FEW;
  const named = all.length <= FEW ? ordered : ordered.slice(0, most);
  const more = all.length - named.length;
  return {
    count: all.length,
    named: named.map((check) => briefWords(check, system)),
    rest: more === 0 ? null : `and ${more} more ${part ? "on other pages" : "on the Build pages"}.`,
  };
}

function isOfLine(where: Where | null): boolean {
  return where === null || where.at === "whole-line" || where.at === "stretches";
}

function isOn(where: Where | null, part: LinePart): boolean {
  if (where?.at === "station") return isWithin(where.chainageM, part);
  if (where?.at !== "stretch") return false;
  const { fromM, toM, overClosing } = where;
  return overClosing
    ? part.toM >= fromM || part.fromM <= toM
    : part.toM >= fromM && part.fromM <= toM;
}

function isWithin(m: number, { fromM, toM }: LinePart): boolean {
  return m >= fromM && m <= toM;
}

/** `late: behind the water from Wed 11:00, worst at 2+15` */
function lateWords(
  { startAt, behindFromH, behindAtM }: Extract<Check["finding"], { readonly kind: "late" }>,
  system: UnitSystem,
): string {
  const from = hourWords(startAt, behindFromH, system);
  return `late: behind the water from ${from}, worst at ${unitsOf(system).station(behindAtM)}`;
}

function briefWords(check: Check, system: UnitSystem): string {
  const { length, lengthOver } = unitsOf(system);
  const { finding } = check;
  const brief = checkBrief(check, system);
  if (!brief) return `${capital(checkWords(check, system).message)}.`;
  const what =
    finding.kind === "over-limit" || finding.kind === "type-limit"
      ? `${lengthOver(finding.heightM, finding.limitM)} high, over the height limit of ${length(finding.limitM)}`
      : finding.kind === "late"
        ? lateWords(finding, system)
        : brief.what;
  return `${brief.where === null ? capital(what) : `${brief.where}: ${what}`}.`;
}
