import type { ForecastPlace } from "../forecasts/types.ts";
import { capital } from "./capital.ts";

/** `line 4, column 18`, `line 4`, `forecast row 2` or the name of the series, within a sentence. */
export function placeWithin(place: ForecastPlace): string {
  if ("series" in place) return place.series || "the series";
  if ("row" in place) return `forecast row ${place.row}`;
  return `line ${place.line}${"column" in place ? `, column ${place.column}` : ""}`;
}

/** `Line 4, column 18`. */
export function placeWords(place: ForecastPlace): string {
  return capital(placeWithin(place));
}
