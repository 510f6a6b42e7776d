import { A_STRETCH_M, isCounted } from "../completeness.ts";
import type { Holding, Inside, Pumping } from "../holding/types.ts";
import type { SizedLine } from "../sizing-types.ts";
import { formatFlowUpTo, formatLength, type UnitSystem } from "../units.ts";
import { spanWords } from "./holding.ts";
import { pumpCountWords } from "./pumps.ts";

interface PumpedLine {
  readonly line: SizedLine;
  readonly holding: Pick<Holding, "pumping">;
}

/** Pumps to bring, how soon a building is wet without, and what is over the height limit; nothing where none is known. */
export function pumpsSummary(
  { line, holding }: PumpedLine,
  system: UnitSystem,
): string | undefined {
  const { proposed, hoursToStructure } = holding.pumping;
  if (!proposed || !isCounted(line)) return undefined;
  const { soonest } = hoursToStructure;
  const without =
    soonest === null ? "" : `; without pumps, water at a building in ${spanWords(soonest)}`;
  const overM = line.totals.lengthOverLimitM;
  const over =
    overM > A_STRETCH_M
      ? `. ${formatLength(overM, system, 0)} over the height limit: see All checks`
      : "";
  return `Pumps: ${pumpCountWords(proposed)}${without}${over}`;
}

/** In which time a building is wet when nothing is pumped. */
export function wetInWords({ inside, pumping }: Holding): string {
  const { soonest, latest } = pumping.hoursToStructure;
  if (inside?.structureM == null) return "not known";
  if (soonest === null) return "not by this";
  const [from, to] = [spanWords(soonest), latest === null ? null : spanWords(latest)];
  if (to === null) return `${from} or more`;
  return from === to ? from : `${from} to ${to}`;
}

/** What counts as wet in {@link wetInWords}, and by which rain. */
export function wetInNote(by: Inside["structureBy"]): string {
  if (by === null) return "No building inside with elevation data under it.";
  const from = by === "floor" ? "A building's lowest floor" : "The lowest ground at a building";
  return `${from}: soonest in that rain with the most seepage, latest with no rain and the least.`;
}

/** What water inside gains when one pump fails. */
export function onePumpFails(
  { excessM3PerS }: NonNullable<Pumping["oneFails"]>,
  system: UnitSystem,
): string {
  if (!(excessM3PerS > 0)) return "the others carry it";
  return `gains up to ${formatFlowUpTo(excessM3PerS, system)}`;
}

/** What to do then. */
export function onePumpFailsNote({ oneFails }: Pumping): string {
  if (!oneFails || !(oneFails.excessM3PerS > 0)) return "Start the spare all the same.";
  if (oneFails.hoursToStructure === null) return "Start the spare at once.";
  return `A building is wet in ${spanWords(oneFails.hoursToStructure)} at the most: start the spare at once.`;
}
