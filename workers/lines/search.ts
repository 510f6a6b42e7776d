/* The search for a line and what moving one costs: fetched when first needed. */
export { findLines } from "./find-lines.ts";
export { improve } from "./improve.ts";
export { sideways } from "./sideways.ts";
