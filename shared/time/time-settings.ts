import { FOOT_M } from "../constants.ts";
import { type Setting, setting } from "../setting.ts";

/** Every adjustable number about time and people at work. */
export const TIME_SETTINGS = {
  "time.marginM": setting("the margin over the water", "length", 1 * FOOT_M, [0, 3], "judgement"),
  "time.setUpH": setting("the hours of setting up", "hours", 2, [0, 240], "assumed, no source"),
  "time.fillShare": setting(
    "the share of people who fill",
    "share",
    0.5,
    [0.05, 0.95],
    "judgement",
  ),
  "time.crews": setting("the number of crews", "count", 2, [1, 50], "assumed, no source"),
  "time.shifts": setting("the number of shifts", "count", 2, [1, 24], "assumed, no source"),
  "time.shiftH": setting("the length of a shift", "hours", 8, [0.5, 24], "assumed, no source"),
  "time.dayFromH": setting(
    "the start of a day's work",
    "clock",
    0,
    [0, 24],
    "Meeus, Astronomical Algorithms, from memory",
  ),
  "time.dayToH": setting(
    "the end of a day's work",
    "clock",
    24,
    [0, 24],
    "Meeus, Astronomical Algorithms, from memory",
  ),
  "time.liftM": setting("the height of a lift", "length", 1 * FOOT_M, [0.1, 10], "judgement"),
} as const satisfies Record<string, Setting>;
