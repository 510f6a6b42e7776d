import { ADDRESS_REFUSALS } from "./address.ts";
import { RASTER_REFUSALS } from "./raster.ts";
import { SEARCH_REFUSALS } from "./search.ts";
import { VRT_REFUSALS } from "./vrt.ts";

/** Reasons that only the engine gives: the page fetches their texts with the first of them. */
export const LATE_REFUSALS = {
  ...ADDRESS_REFUSALS,
  ...RASTER_REFUSALS,
  ...SEARCH_REFUSALS,
  ...VRT_REFUSALS,
};
