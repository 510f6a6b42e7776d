import { ADDRESS_REFUSALS } from "./refusals/address.ts";
import { FORECAST_REFUSALS } from "./refusals/forecast.ts";
import type { FORECAST_READING_REFUSALS } from "./refusals/forecast-reading.ts";
import { LINE_REFUSALS } from "./refusals/line.ts";
import { RASTER_REFUSALS } from "./refusals/raster.ts";
import type { READINGS_REFUSALS } from "./refusals/readings.ts";
import { SEARCH_REFUSALS } from "./refusals/search.ts";
import { TYPED_REFUSALS } from "./refusals/typed.ts";
import { VRT_REFUSALS } from "./refusals/vrt.ts";

/** The text of each reason that can reach the page at any time; parts that are loaded later bring their own. */
export const REFUSALS = {
  ...ADDRESS_REFUSALS,
  ...FORECAST_REFUSALS,
  ...LINE_REFUSALS,
  ...RASTER_REFUSALS,
  ...SEARCH_REFUSALS,
  ...VRT_REFUSALS,
  ...TYPED_REFUSALS,
};

export type Refusals = typeof REFUSALS &
  typeof FORECAST_READING_REFUSALS &
  typeof READINGS_REFUSALS;
