import { LINE_REFUSALS } from "./refusals/line.ts";
import { SEARCH_REFUSALS } from "./refusals/search.ts";

/** The text of each reason that can reach the page. */
export const REFUSALS = { ...LINE_REFUSALS, ...SEARCH_REFUSALS };

export type Refusals = typeof REFUSALS;
