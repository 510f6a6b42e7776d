import type { DrawingGrid } from "../exports/drawing-grid.ts";
import type { Found, Stake } from "../stakes/stakes.ts";
import { formatStation, grouped, lengthIn, lengthUnit, type UnitSystem } from "../units.ts";

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
  const tape = fromBefore && tapeFigure(fromBefore.distanceM, system);
  return [
    `lat ${degrees(station.lat)}`,
    `lon ${degrees(station.lon)}`,
    ...(fromBefore ? [`tape ${tape} at ${bearingFigure(fromBefore.bearingDeg)}`] : []),
  ];
}

/** Over the coordinates of all stakes. */
export const STAKE_PLACES_TITLE =
  "Where each stake is: latitude and longitude in WGS 84; tape and bearing (true north) from the stake before";

const UNITS: Readonly<Record<DrawingGrid["unit"], string>> = {
  m: "m",
  ft: "ft",
  "us-ft": "US survey ft",
};

/** Heads of that table; the grid with its name and unit. */
export function placeHeads(grid: DrawingGrid | null, system: UnitSystem): readonly string[] {
  return [
    ...["Station", "Latitude", "Longitude"],
    ...(grid ? [`East, ${grid.name}, ${UNITS[grid.unit]}`, "North, same grid"] : []),
    ...[`Tape, ${lengthUnit(system)}`, "Bearing"],
  ];
}

/** One row of it: a stake without a grid has no east and north. */
export function placeRow(
  { station, fromBefore }: Stake,
  xy: readonly [number, number] | null,
  system: UnitSystem,
): readonly string[] {
  return [
    formatStation(station.chainageM, system),
    degrees(station.lat),
    degrees(station.lon),
    ...(xy ?? []).map((value) => value.toFixed(2)),
    fromBefore ? tapeFigure(fromBefore.distanceM, system) : "",
    fromBefore ? bearingFigure(fromBefore.bearingDeg) : "",
  ];
}

/** To about 0.1 m. */
function degrees(value: number): string {
  return value.toFixed(6).replace("-", "−");
}

function bearingFigure(deg: number): string {
  return `${deg.toFixed(1)}°`;
}

/** What the ground at a stake is: of the elevation data, read in the field, or between two readings. */
export function groundFromWords({ groundFrom }: Stake["station"]): string {
  if (groundFrom === "reading") return "read in the field";
  if (groundFrom === "between") return "between readings";
  return "elevation data";
}
