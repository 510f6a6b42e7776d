import type { BandChoice, BandChoices } from "../buildings/level-choices.ts";
import { BANDS } from "../buildings/level-choices.ts";
import type { Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import type { Band } from "../time/hydrograph.ts";
import { formatCount, formatElevation, formatLength, type UnitSystem } from "../units.ts";
import { BAND_NAMES, ringedOf, runsOutName } from "./buildings-answer.ts";
import { listed } from "./list.ts";

export const FORECASTS = {
  title: "Low, likely, high forecast",
  same: "The same in all three",
  none: "No building is ringed in all three.",
  note: "The same lines, built as high as each forecast needs. No new line is searched for.",
} as const;

/** A row of the table of the three forecasts: what it is, and one cell for each of them. */
export interface ForecastRow {
  readonly head: string;
  readonly cells: Readonly<Record<Band, string>>;
}

/** What is chosen at the crest of each forecast, side by side. */
export function forecastRows(
  { bands }: BandChoices,
  { water }: Pick<Plan, "water">,
  system: UnitSystem,
): readonly ForecastRow[] {
  const row = (head: string, cell: (of: BandChoice) => string): ForecastRow => ({
    head,
    cells: { low: cell(bands.low), likely: cell(bands.likely), high: cell(bands.high) },
  });
  const zeroM = water.by === "stage" ? waterElevationAtGauge(water) - water.stageM : null;
  return [
    row("Forecast crest", ({ levelM }) =>
      zeroM === null ? formatElevation(levelM, system) : formatLength(levelM - zeroM, system),
    ),
    row("Ringed of flooded", ringedOfFlooded),
    row("Bags to order", ({ choice }) => formatCount(Math.round(choice.bags))),
    row("Person-hours", ({ choice }) => formatCount(Math.round(choice.personHours))),
    row("Runs out first", ({ choice }) => runsOutName(choice.runsOutFirst)),
  ];
}

/** `13 of 37`: ringed of those that flood. */
export function ringedOfFlooded({ choice, flooded }: BandChoice): string {
  return ringedOf(choice.buildings.length, flooded);
}

/** `7 lines, 9 buildings: Clinic, Lift station 2 ...`; the buildings may be ringed by different lines. */
export function sameWords({ same }: Pick<BandChoices, "same">, names: readonly string[]): string {
  if (same.buildings.length === 0) return FORECASTS.none;
  const lines = same.lines.length === 1 ? "1 line" : `${formatCount(same.lines.length)} lines`;
  const buildings = names.length === 1 ? "1 building" : `${formatCount(names.length)} buildings`;
  return `${buildings}, ${lines} the same: ${names.join(", ")}.`;
}

/** At which forecasts a line is chosen, among other words: `chosen at low, likely and high forecast`. */
export function chosenAtWords({ bands }: BandChoices, id: string): string {
  const at = BANDS.filter((band) => bands[band].choice.chosen.includes(id));
  if (at.length === 0) return "chosen at none of the three forecasts";
  return `chosen at ${listed(at.map((band) => BAND_NAMES[band].toLowerCase()))} forecast`;
}

/** `9 to 17 if the ground is off by 0.33 ft.` */
export function offWords(
  { byM, fewest, most }: { readonly byM: number; readonly fewest: number; readonly most: number },
  system: UnitSystem,
): string {
  const range =
    fewest === most
      ? `Still ${formatCount(most)}`
      : `${formatCount(fewest)} to ${formatCount(most)}`;
  return `${range} if the ground is off by ${formatLength(byM, system, 2)}.`;
}
