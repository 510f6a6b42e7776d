import { refusal } from "../failure.ts";
import type { ForecastNote, ForecastPlace, Levels, ReadingWith } from "./types.ts";

/** One series among those of a text. */
export interface Series {
  /** The gauge, as the text names it; empty where it names none. */
  readonly station: string;
  /** The gauge and what is measured there. */
  readonly name: string;
  /** The least is taken before the others of its gauge. */
  readonly rank: number;
}

/**
 * The one series to take: that which the person chose, or the first in rank of the only gauge.
 * @throws Refusal `forecast/which` where the person must choose, `forecast/no-level` where there is none
 */
export function chosenSeries<T extends Series>(
  all: readonly T[],
  { series: chosen }: ReadingWith,
  others: readonly string[],
): { readonly taken: T; readonly notes: readonly ForecastNote[] } {
  if (all.length === 0) throw refusal("forecast/no-level", { others });
  const named = all.filter(({ station, name }) => isNamed(chosen, station, name));
  const among = chosen === null ? all : named;
  const which = (few: readonly T[]) =>
    refusal("forecast/which", { of: "series", names: few.map(({ name }) => name) });
  if (among.length === 0) throw which(all);
  const stations = [...new Set(among.map(({ station }) => station))];
  if (stations.length > 1) throw refusal("forecast/which", { of: "gauges", names: stations });
  const best = Math.min(...among.map(({ rank }) => rank));
  const first = among.filter(({ rank }) => rank === best);
  if (first.length > 1) throw which(first);
  const taken = first[0]!;
  const left = [...all.filter((each) => each !== taken).map(({ name }) => name), ...others];
  const note: ForecastNote = { kind: "series", taken: taken.name, others: left };
  return { taken, notes: left.length > 0 ? [note] : [] };
}

function isNamed(chosen: string | null, station: string, name: string): boolean {
  const wanted = chosen?.trim().toLowerCase();
  return wanted === station.toLowerCase() || wanted === name.toLowerCase();
}

/**
 * What the levels are: as the text says, else as the person or the plan does.
 * @throws Refusal `forecast/columns` where the text says another than the person chose
 */
export function levelsGiven(
  named: Levels | null,
  { levels: chosen, usualLevels }: ReadingWith,
  place: ForecastPlace,
): Levels {
  if (named === null || chosen === null || named === chosen) {
    return named ?? chosen ?? usualLevels;
  }
  throw refusal("forecast/columns", { place, how: "levels", chosen, named });
}
