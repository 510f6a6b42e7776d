import { LINE_REFUSALS } from "./refusals/line.ts";

/** The text of each reason that can reach the page. */
export const REFUSALS = { ...LINE_REFUSALS };

export type Refusals = typeof REFUSALS;
