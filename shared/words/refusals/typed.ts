import type { LessonKnob } from "../../lesson/teaching-ground.ts";
import type { Setting } from "../../setting.ts";
import { type FigureKind, figureWords } from "../figure.ts";
import { quoted, typedWords } from "../quoted.ts";
import type { Units } from "../units.ts";
import type { RefusalText, RefusalTexts } from "./text.ts";

interface SettingCame {
  readonly setting: Omit<Setting, "name">;
  /** False for a figure that only the person can give, such as a stage. */
  readonly hasDefault: boolean;
  readonly came: string;
}

function settingText({ setting, hasDefault, came }: SettingCame, { system }: Units): RefusalText {
  const { kind, lowSI, highSI, defaultSI } = setting;
  const [low, high] = [lowSI, highSI].map((si) => figureWords(kind, si, system));
  return [
    `Expected a value from ${low} to ${high}; ${typedWords(came)}.`,
    hasDefault
      ? `Type a value such as ${figureWords(kind, defaultSI, system)}, which is the default.`
      : "Type a number, with its unit if it is another than the one shown.",
  ];
}

interface Outside {
  readonly kind: FigureKind;
  readonly least: number;
  readonly most: number;
  readonly came: number;
}

/** Of figures that are typed. */
export const TYPED_REFUSALS = {
  "setting/unreadable": settingText,
  "setting/out-of-range": settingText,
  "field/out-of-range": ({ kind, least, most, came }: Outside, { system }) => {
    const [from, to, it] = [least, most, came].map((si) => figureWords(kind, si, system));
    return [`Expected ${from} to ${to}; ${it} came.`, "Check the figure and its unit."];
  },
  "field/not-whole": ({ came }: { came: number }) => [
    `Expected a whole number; ${came} came.`,
    "Leave the decimals out.",
  ],
  "length/unreadable": (
    { came, isDecimalComma }: { came: string; isDecimalComma: boolean },
    { system },
  ) => [
    `Expected a length such as ${system === "us" ? `3.5 ft, 3'6" or 1.07 m` : `1.07 m, 107 cm or 3'6"`}; ${came === "" ? "nothing was typed" : `${quoted(came)} is not one`}.`,
    isDecimalComma
      ? "Write decimals with a point (3.5) and thousands with commas (1,250)."
      : `Type a number, with a unit if it is not in ${system === "us" ? "feet" : "meters"}.`,
  ],
  "station/unreadable": ({ came, below }: { came: string; below: number | null }, { system }) => [
    `Expected a station such as ${system === "us" ? "12+50 (1,250 ft)" : "1+250.0 (1,250 m)"}; ${quoted(came)} is not one.`,
    below === null
      ? "Type a station, or a distance from the start of the line."
      : `The figure after the plus must be below ${below}.`,
  ],
  "degrees/unreadable": ({ least, most, came }: { least: number; most: number; came: string }) => [
    `Expected decimal degrees from ${least} to ${most}; ${typedWords(came)}.`,
    "Type a number of degrees.",
  ],
  "corners/unreadable": ({ least, most }: { least: number; most: number }) => [
    `Expected a whole number of corners from ${least} to ${most}.`,
    "More corners follow the ground closer, fewer are easier to build.",
  ],
  "lesson/not-a-figure": ({ knob, came }: { knob: LessonKnob; came: string }) => [
    `Expected a figure such as ${knob === "slope" ? "2.5" : "3"}; ${typedWords(came)}.`,
    knob === "slope" ? "Type the fall in 100." : "Type how many times the height.",
  ],
  "time/start": ({ came }: { came: string }) => [
    `Expected a date and a time such as 2026-04-07 07:00; ${typedWords(came)}.`,
    "Write year, month, day and the hour on the 24-hour clock.",
  ],
  "readings/no-line": () => [
    "Expected a line that the stations count along; none is calculated.",
    "Draw or choose the line that was read.",
  ],
} satisfies RefusalTexts;
