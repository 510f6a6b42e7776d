import { DEFAULT_TIME } from "../defaults.ts";
import { type Setting, setting } from "../setting.ts";

/** Every adjustable number about time and people at work. */
export const TIME_SETTINGS = {
  "time.marginM": setting("length", DEFAULT_TIME.marginM, [0, 3], "judgement"),
  "time.setUpH": setting("hours", DEFAULT_TIME.setUpH, [0, 240], "assumed, no source"),
  "time.fillShare": setting("share", DEFAULT_TIME.fillShare, [0.05, 0.95], "judgement"),
  "time.crews": setting("count", DEFAULT_TIME.crews, [1, 50], "assumed, no source"),
  "time.shifts": setting("count", 2, [1, 24], "assumed, no source"),
  "time.shiftH": setting("hours", DEFAULT_TIME.shiftH, [0.5, 24], "assumed, no source"),
  "time.dayFromH": setting("clock", 0, [0, 24], "Meeus, Astronomical Algorithms, from memory"),
  "time.dayToH": setting("clock", 24, [0, 24], "Meeus, Astronomical Algorithms, from memory"),
  "time.liftM": setting("length", DEFAULT_TIME.liftM, [0.1, 10], "judgement"),
} as const satisfies Record<string, Setting>;
