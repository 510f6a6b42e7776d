import type { Holding } from "../holding/types.ts";
import type { Plan } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import {
  formatCount,
  formatFlow,
  formatLength,
  formatVolume,
  grouped,
  lengthIn,
  type UnitSystem,
} from "../units.ts";
import { type MaterialKey, takenMaterials } from "./materials.ts";
import { elapsedWords } from "./time.ts";

/** What a line of {@link takesWords} is of; a make-up key where the figure has one. */
export type TakesKey = "sandM3" | "sheetRolls" | "time" | "pumps" | MaterialKey;

/** One thing that a line takes beside its bags. */
interface TakesLine {
  readonly key: TakesKey;
  readonly name: string;
  readonly amount: string;
}

/** What a line is known by. */
interface Taken {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly holding: Holding | null;
}

/** What a line takes beside its bags: sand, poly sheeting, other materials, people's hours, pumps. */
export function takesWords({ plan, line, holding }: Taken, system: UnitSystem): TakesLine[] {
  const { totals } = line;
  const { people } = plan.practice;
  return [
    {
      key: "sandM3",
      name: "Sand",
      amount: `${formatVolume(totals.sandM3, system)}, ${loadsWords(totals.trucks)}`,
    },
    {
      key: "sheetRolls",
      name: "Poly sheeting",
      amount: rollsWords(totals.sheetRolls),
    },
    ...takenMaterials(totals.materials, system).map(({ key, name, amount }) => ({
      key,
      name,
      amount,
    })),
    {
      key: "time",
      name: people === null ? "Crew" : `${formatCount(people)} people`,
      amount: hoursWords(line),
    },
    ...(holding?.pumping.proposed ? [pumpsLine(holding.pumping.proposed, system)] : []),
  ];
}

function loadsWords(trucks: number): string {
  return trucks === 1 ? "1 truckload" : `${formatCount(trucks)} truckloads`;
}

/** `9 rolls` */
export function rollsWords(rolls: number): string {
  return rolls === 1 ? "1 roll" : `${formatCount(rolls)} rolls`;
}

/** `20 × 100 ft`: what a roll of poly sheeting measures. */
export function rollWords({ section }: Pick<Plan, "section">, system: UnitSystem): string {
  const wide = grouped(lengthIn(section.sheet.rollWidthM, system), 0);
  return `${wide} × ${formatLength(section.sheet.rollLengthM, system, 0)}`;
}

function hoursWords({ time }: SizedLine): string {
  const words = elapsedWords(time);
  const isHours = time && time.missing.length === 0 && time.finishSlowH !== null;
  return isHours ? `${words} elapsed` : words;
}

function pumpsLine(
  { working, spare, eachM3PerS }: NonNullable<Holding["pumping"]["proposed"]>,
  system: UnitSystem,
): TakesLine {
  const spares = spare === 0 ? "no spare" : `${spare} spare`;
  return {
    key: "pumps",
    name: "Pumps",
    amount: `${working} + ${spares}, ${formatFlow(eachM3PerS, system)}`,
  };
}
