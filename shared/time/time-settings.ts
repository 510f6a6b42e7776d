import { DEFAULT_TIME } from "../defaults.ts";
import { type Setting, setting } from "../setting.ts";

const DAYLIGHT = [
  "Meeus, Astronomical Algorithms, from memory",
  "Left empty, work without lights goes from sunrise to sunset at the site. An hour typed here only makes the day shorter.",
] as const;

/** Every adjustable number about time and people at work. */
export const TIME_SETTINGS = {
  "time.marginM": setting(
    "length",
    DEFAULT_TIME.marginM,
    [0, 3],
    "judgement",
    "How far the crest stays above the water while it is built. Where the finished crest has less freeboard, the finished crest is asked for.",
  ),
  "time.setUpH": setting(
    "hours",
    DEFAULT_TIME.setUpH,
    [0, 240],
    "assumed, no source",
    "Calling people, clearing and stripping the line, first sand and bags on site.",
  ),
  "time.fillShare": setting(
    "share",
    DEFAULT_TIME.fillShare,
    [0.05, 0.95],
    "judgement",
    "Filling and placing go at the same rate (THW-E), so half fill and half lay.",
  ),
  "time.crews": setting(
    "count",
    DEFAULT_TIME.crews,
    [1, 50],
    "assumed, no source",
    "Crews that lay side by side. Together they are no faster than all people in one.",
  ),
  "time.shifts": setting(
    "count",
    2,
    [1, 24],
    "assumed, no source",
    "Shifts in 24 hours, each with the people stated. A typical figure: nothing is timed until you enter your own.",
  ),
  "time.shiftH": setting("hours", DEFAULT_TIME.shiftH, [0.5, 24], "assumed, no source"),
  "time.dayFromH": setting("clock", 0, [0, 24], ...DAYLIGHT),
  "time.dayToH": setting("clock", 24, [0, 24], ...DAYLIGHT),
  "time.liftM": setting(
    "length",
    DEFAULT_TIME.liftM,
    [0.1, 10],
    "judgement",
    "The lowest ground first, and the whole line lift by lift. A lift as high as the levee builds one stretch after the other.",
  ),
} as const satisfies Record<string, Setting>;
