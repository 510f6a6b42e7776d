import { Refusal } from "../failure.ts";
import type { ForecastNote, Levels, ReadingWith } from "./types.ts";

/** One series among those of a text. */
export interface Series {
  /** The gauge, as the text names it; empty where it names none. */
  readonly station: string;
  /** The gauge and what is measured there. */
  readonly name: string;
  /** The least is taken before the others of its gauge. */
  readonly rank: number;
}

const MOST_NAMED = 12;

/**
 * The one series to take: that which the person chose, or the first in rank of the only gauge.
 * @throws Refusal `forecast/which` where the person must choose, `forecast/no-level` where there is none
 */
export function chosenSeries<T extends Series>(
  all: readonly T[],
  { series: chosen }: ReadingWith,
  others: readonly string[],
): { readonly taken: T; readonly notes: readonly ForecastNote[] } {
  if (all.length === 0) throw noLevel(others);
  const named = all.filter(({ station, name }) => isNamed(chosen, station, name));
  const among = chosen === null ? all : named;
  if (among.length === 0)
    throw which(
      "series",
      all.map(({ name }) => name),
    );
  const stations = [...new Set(among.map(({ station }) => station))];
  if (stations.length > 1) throw which("gauges", stations);
  const best = Math.min(...among.map(({ rank }) => rank));
  const first = among.filter(({ rank }) => rank === best);
  if (first.length > 1)
    throw which(
      "series",
      first.map(({ name }) => name),
    );
  const taken = first[0]!;
  const left = [...all.filter((each) => each !== taken).map(({ name }) => name), ...others];
  const note: ForecastNote = { kind: "series", taken: taken.name, others: left };
  return { taken, notes: left.length > 0 ? [note] : [] };
}

function isNamed(chosen: string | null, station: string, name: string): boolean {
  const wanted = chosen?.trim().toLowerCase();
  return wanted === station.toLowerCase() || wanted === name.toLowerCase();
}

function which(what: string, names: readonly string[]): Refusal {
  const listed = names.slice(0, MOST_NAMED).map((name) => `"${name}"`);
  const more = names.length > MOST_NAMED ? ` and ${names.length - MOST_NAMED} more` : "";
  return new Refusal(
    "forecast/which",
    `Expected one series of water levels, or which one of several to use; there are ${names.length} ${what}: ${listed.join(", ")}${more}.`,
    "Say which one this plan is for.",
    { choices: names.slice(0, MOST_NAMED) },
  );
}

function noLevel(others: readonly string[]): Refusal {
  const came = others.slice(0, MOST_NAMED).map((name) => `"${name}"`);
  return new Refusal(
    "forecast/no-level",
    `Expected a series of water levels, stage or elevation; ${came.length > 0 ? `came ${came.join(", ")}` : "there is none"}.`,
    "Get the forecast of the stage; a flow alone says no level.",
  );
}

/**
 * What the levels are: as the text says, else as the person or the plan does.
 * @throws Refusal `forecast/columns` where the text says another than the person chose
 */
export function levelsGiven(
  named: Levels | null,
  { levels: chosen, usualLevels }: ReadingWith,
  where: string,
): Levels {
  if (named === null || chosen === null || named === chosen) {
    return named ?? chosen ?? usualLevels;
  }
  throw new Refusal(
    "forecast/columns",
    `${where.charAt(0).toUpperCase()}${where.slice(1)}: expected a forecast by ${chosen}, as chosen; it names ${named}.`,
    `Choose ${named} for this forecast, or correct it there.`,
  );
}
