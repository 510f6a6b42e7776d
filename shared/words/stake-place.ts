import type { Found, Stake } from "../stakes/stakes.ts";
import { formatStation, grouped, lengthIn, type UnitSystem } from "../units.ts";

/** `18.6` or `5.67`: what a tape is read to, without its unit. */
export function tapeFigure(m: number, system: UnitSystem): string {
  return grouped(lengthIn(m, system), system === "us" ? 1 : 2);
}

/** How a stake is found where it has no ties; null where it has. */
export function foundWords(found: Found, system: UnitSystem): string | null {
  if (found.by === "ties") return null;
  if (found.by === "start") return `same stake as ${formatStation(0, system)}`;
  if (found.by === "coordinates") return "by coordinates";
  const [from, to] = [found.fromM, found.toM].map((m) => formatStation(m, system));
  return `on line ${from} to ${to}`;
}

/**
 * What stands on the page for the ties of a stake that has none. A stake by coordinates has its degrees,
 * to about 0.1 m, and the tape and bearing (clockwise from true north) from the stake before: `tape 25.0 at 84.3°`.
 */
export function foundLines(
  {
    found,
    station,
    fromBefore,
  }: Pick<Stake, "found" | "fromBefore"> & {
    readonly station: Pick<Stake["station"], "lon" | "lat">;
  },
  system: UnitSystem,
): string[] {
  const words = foundWords(found, system);
  if (found.by !== "coordinates") return words === null ? [] : [words];
  const degrees = (value: number) => value.toFixed(6).replace("-", "−");
  const tape = fromBefore && tapeFigure(fromBefore.distanceM, system);
  return [
    `lat ${degrees(station.lat)}`,
    `lon ${degrees(station.lon)}`,
    ...(fromBefore ? [`tape ${tape} at ${fromBefore.bearingDeg.toFixed(1)}°`] : []),
  ];
}

/** What the ground at a stake is: of the elevation data, read in the field, or between two readings. */
export function groundFromWords({ groundFrom }: Stake["station"]): string {
  if (groundFrom === "reading") return "read in the field";
  if (groundFrom === "between") return "between readings";
  return "elevation data";
}
