import { DEFAULT_HOLDING } from "../defaults.ts";
import { type Setting, setting } from "../setting.ts";

/** Every adjustable number about standing, seeping and pumping. */
export const HOLDING_SETTINGS = {
  "holding.frictionLow": setting(
    "ratio",
    DEFAULT_HOLDING.frictionLow,
    [0.05, 2],
    "from memory, weak; NAV702",
  ),
  "holding.frictionHigh": setting(
    "ratio",
    DEFAULT_HOLDING.frictionHigh,
    [0.05, 2],
    "from memory, weak; NAV702",
  ),
  "holding.leveeKgPerM3": setting(
    "density",
    DEFAULT_HOLDING.leveeKgPerM3,
    [500, 3000],
    "derived from NDSU-11",
  ),
  "holding.slidingFactor": setting(
    "ratio",
    DEFAULT_HOLDING.slidingFactor,
    [1, 5],
    "FEMA P-259, from memory",
  ),
  "holding.overturningFactor": setting(
    "ratio",
    DEFAULT_HOLDING.overturningFactor,
    [1, 5],
    "FEMA P-259, from memory",
  ),
  "holding.fillLowMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.fillLowMPerS,
    [1e-8, 1],
    "from memory",
  ),
  "holding.fillHighMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.fillHighMPerS,
    [1e-8, 1],
    "from memory",
  ),
  "holding.sheetCutLow": setting(
    "share",
    DEFAULT_HOLDING.sheetCutLow,
    [0, 1],
    "common practice, no source",
  ),
  "holding.sheetCutHigh": setting(
    "share",
    DEFAULT_HOLDING.sheetCutHigh,
    [0, 1],
    "common practice, no source",
  ),
  "holding.underDepthM": setting("length", DEFAULT_HOLDING.underDepthM, [0, 100], "judgement"),
  "holding.underLowMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.underLowMPerS,
    [1e-8, 1],
    "TP-K",
  ),
  "holding.underHighMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.underHighMPerS,
    [1e-8, 1],
    "TP-K",
  ),
  "holding.trenchLowM": setting("small-length", DEFAULT_HOLDING.trenchLowM, [0.02, 3], "NDSU-11"),
  "holding.trenchHighM": setting("small-length", DEFAULT_HOLDING.trenchHighM, [0.02, 3], "NDSU-11"),
  "holding.rainMPerS": setting(
    "rain",
    DEFAULT_HOLDING.rainMPerS,
    [0, 300 / 3.6e6],
    "assumed, no source",
  ),
  "holding.runoffLow": setting("ratio", DEFAULT_HOLDING.runoffLow, [0, 1], "from memory"),
  "holding.runoffHigh": setting("ratio", DEFAULT_HOLDING.runoffHigh, [0, 1], "from memory"),
  "holding.pumpMargin": setting("ratio", DEFAULT_HOLDING.pumpMargin, [1, 5], "from memory"),
  "holding.pumpSpares": setting("count", DEFAULT_HOLDING.pumpSpares, [0, 20], "from memory"),
} as const satisfies Record<string, Setting>;
