import type { ToGrid } from "../../shared/exports/formats.ts";
import { engine } from "../engine.ts";

/** Puts places on the grid of the elevation data that is open. */
export const toGrid: ToGrid = (places) => engine.toGrid({ places });
