import { byHand, byProgram, HAND_DIGITS } from "../lesson/by-hand.ts";
import type { LessonShape } from "../lesson/lesson-shape.ts";
import type { LessonKnob, TeachingGround } from "../lesson/teaching-ground.ts";
import {
  formatCount,
  formatShare,
  formatStation,
  grouped,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { type FigureKind, figureWords } from "./figure.ts";
import { unitsOf } from "./units.ts";

/** What the lesson calls its parts and what it draws. */
export const LESSON = {
  name: "Lesson",
  about: "How the slope of the ground drives the height",
  explore: "Explore",
  predict: "Predict, then show",
  close: "Close",
  along: "Along the line",
  before: "before",
  topOfLevee: "Top of levee",
  waterSide: "Water side",
  landSide: "Land side",
  limit: "Height limit",
  notForBuilding: "Teaching ground, not for building. Local codes and licensed engineers decide.",
  byProgram: "By the program",
  nothing: "No levee needed here",
  unknown: "?",
} as const;

/** Names of what the sliders set. */
export const KNOB_NAMES: Readonly<Record<LessonKnob, string>> = {
  slope: "Ground slope",
  riverM: "River level",
  freeboardM: "Freeboard",
  baseRatio: "Base",
};

/** `foot` or `meter`: what bags are counted by. */
export function lengthName(system: UnitSystem): string {
  return system === "us" ? "foot" : "meter";
}

/** `2.5`, of `2.5 in 100`. */
export function slopeFigure(slope: number): string {
  return (slope * 100).toFixed(1);
}

/** What the figure of each slider is. */
export const KNOB_KINDS: Readonly<Record<LessonKnob, FigureKind>> = {
  slope: "fall-in-100",
  riverM: "fine-length",
  freeboardM: "fine-length",
  baseRatio: "times-height",
};

/** A figure of a slider with its unit: `2.5 in 100`, `333.65 ft`, `3.0 × height`. */
export function knobFigure(knob: LessonKnob, value: number, system: UnitSystem): string {
  return figureWords(KNOB_KINDS[knob], value, system);
}

/** The end of a slider: `0`, `335`, `0.9`. */
export function knobEnd(knob: LessonKnob, value: number, system: UnitSystem): string {
  const shown =
    knob === "slope" ? value * 100 : knob === "baseRatio" ? value : lengthIn(value, system);
  return shortFigure(shown);
}

/** `1+00` or `0+030`. */
export function stationWords(stationM: number, system: UnitSystem): string {
  return formatStation(stationM, system, 0);
}

/** An elevation or a length without its unit, two decimals. */
export function bare(m: number, system: UnitSystem): string {
  return grouped(lengthIn(m, system), 2);
}

/** `4.70 ft`. */
export function heightWords(m: number, system: UnitSystem): string {
  return unitsOf(system).length(m, 2);
}

/** Bags per foot or meter without their unit: `112.7`. */
export function bagsWords(perM: number, system: UnitSystem): string {
  return grouped(perM / lengthIn(1, system), 1);
}

/** `straight down the slope, vertical exaggeration 5x`. */
export function alongWords(exaggeration: number): string {
  return `straight down the slope, vertical exaggeration ${Math.round(exaggeration)}x`;
}

/** `falls 2.5 ft in 100 ft`. */
export function fallWords(slope: number, system: UnitSystem): string {
  const unit = lengthUnit(system);
  return slope > 0 ? `falls ${slopeFigure(slope)} ${unit} in 100 ${unit}` : "level ground";
}

/** `Cross-section at 1+00`. */
export function sectionTitle(stationM: number, system: UnitSystem): string {
  return `Cross-section at ${stationWords(stationM, system)}`;
}

/** What is drawn of the cross-section. */
export function sectionNote(drawn: "now" | "now-and-before" | "before"): string {
  if (drawn === "before") return "before, to scale";
  return drawn === "now" ? "to scale" : "to scale; dotted: before";
}

/** `3.70 ft deep`; empty where the river lies under the ground. */
export function depthWords(depthM: number, system: UnitSystem): string {
  return depthM > 0 ? `${heightWords(depthM, system)} deep` : "";
}

/** `base 14.10 ft`. */
export function baseWords(baseM: number, system: UnitSystem): string {
  return `base ${heightWords(baseM, system)}`;
}

/** `before 9.60`. */
export function beforeWords(figure: string): string {
  return `${LESSON.before} ${figure}`;
}

/** `height limit 4.0 ft`. */
export function limitWords(limitM: number, system: UnitSystem): string {
  return `height limit ${unitsOf(system).length(limitM)}`;
}

/** `Limit 4.0 ft: common practice`. */
export function limitSource(limitM: number, system: UnitSystem): string {
  return `Limit ${unitsOf(system).length(limitM)}: common practice`;
}

/** Whether the levee is over its limit where it is read, or elsewhere along the line; null where it is nowhere. */
export function overWords(shape: LessonShape, system: UnitSystem): string | null {
  const limit = `the ${unitsOf(system).length(shape.practice.limitM)} height limit`;
  if (shape.isOver) return `Over ${limit}: another line, or an engineer.`;
  if (shape.line.totals.lengthOverLimitM > 0) {
    return `Elsewhere on the line over ${limit}: another line, or an engineer.`;
  }
  return null;
}

/** One line of the hand calculation. */
export interface HandLine {
  readonly name: string;
  /** What is calculated, up to the equals sign. */
  readonly working: string;
  readonly result: string;
  /** The program's figure of the shape before; null without one. */
  readonly before: string | null;
  /** What a class waits for: these stand out. */
  readonly isMain: boolean;
  /** Given by the sliders alone: shown before the answer is. */
  readonly isGiven: boolean;
}

/** The hand calculation line by line, with the program's figures of the shape before. */
export function handLines(
  teaching: TeachingGround,
  shape: LessonShape,
  before: LessonShape | null,
): readonly HandLine[] {
  const { system } = teaching;
  const hand = byHand(teaching, shape);
  const was = before && byProgram(teaching, before);
  const digits = HAND_DIGITS[system];
  const unit = lengthUnit(system);
  const [square, cubic] = system === "us" ? ["sq ft", "cu ft"] : ["m²", "m³"];
  const length = (value: number) => grouped(value, digits.length);
  const area = (value: number) => grouped(value, digits.area);
  const bags = (value: number) => grouped(value, digits.bags);
  const given = { isMain: false, isGiven: true };
  const main = { isMain: true, isGiven: false };
  const plain = { isMain: false, isGiven: false };
  return [
    {
      ...given,
      name: LESSON.topOfLevee,
      working: `${length(hand.river)} + ${length(hand.freeboard)}`,
      result: `${length(hand.top)} ${unit}`,
      before: was && length(was.top),
    },
    {
      ...given,
      name: "Ground",
      working: `${length(hand.startGround)} − ${length(hand.fall)}`,
      result: `${length(hand.ground)} ${unit}`,
      before: was && length(was.ground),
    },
    {
      ...main,
      name: "Height",
      working:
        hand.top > hand.ground
          ? `${length(hand.top)} − ${length(hand.ground)}`
          : `top not above ground`,
      result: `${length(hand.height)} ${unit}`,
      before: was && length(was.height),
    },
    {
      ...plain,
      name: "Base",
      working: hand.isCrownWide
        ? "no less than the crown"
        : `${shortFigure(hand.ratio)} × ${length(hand.height)}`,
      result: `${length(hand.base)} ${unit}`,
      before: was && length(was.base),
    },
    {
      ...plain,
      name: "Area",
      working: `(${length(hand.base)} + ${length(hand.crown)}) ÷ 2 × ${length(hand.height)}`,
      result: `${area(hand.area)} ${square}`,
      before: was && area(was.area),
    },
    {
      ...plain,
      name: `Per ${lengthName(system)}`,
      working: `${area(hand.area)} × 1`,
      result: `${area(hand.area)} ${cubic}`,
      before: was && area(was.area),
    },
    {
      ...plain,
      name: "Bags in place",
      working: `${area(hand.area)} ÷ ${grouped(hand.bagVolume, digits.bagVolume)}`,
      result: bags(hand.placed),
      before: was && bags(was.placed),
    },
    {
      ...main,
      name: `${formatShare(hand.spareShare)} spares`,
      working: `${bags(hand.placed)} × ${(1 + hand.spareShare).toFixed(2)}`,
      result: `${bags(hand.bags)} bags`,
      before: was && bags(was.bags),
    },
  ];
}

/** As few decimals as the figure needs: `3`, `2.5`. */
export function shortFigure(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** `By hand, at 1+00`. */
export function handTitle(stationM: number, system: UnitSystem): string {
  return `By hand, at ${stationWords(stationM, system)}`;
}

/** `By the program, bags per foot.` */
export function programWords(system: UnitSystem): string {
  return `${LESSON.byProgram}, bags per ${lengthName(system)}.`;
}

/** What stands under the program's figure until it is shown. */
export function notShownWords(asks: "whole-line" | "per-length", system: UnitSystem): string {
  return asks === "whole-line"
    ? "shown after you predict"
    : `bags per ${lengthName(system)}, shown after you predict`;
}

/** By how much the hand calculation differs from the program, and why. */
export function differenceWords(teaching: TeachingGround, shape: LessonShape): string {
  const { system } = teaching;
  const digits = HAND_DIGITS[system].bags;
  const program = Number(byProgram(teaching, shape).bags.toFixed(digits));
  const more = Number((byHand(teaching, shape).bags - program).toFixed(digits));
  if (more === 0) return "By hand the same.";
  return `By hand ${Math.abs(more).toFixed(digits)} ${more > 0 ? "more" : "fewer"}, from rounding.`;
}

/** What the curve is called. */
export function curveTitle(system: UnitSystem): string {
  return `Bags per ${lengthName(system)} against height`;
}

/** `All 100 ft:`. */
export function wholeLineWords({ lengthM, system }: TeachingGround): string {
  return `All ${unitsOf(system).distance(lengthM)}:`;
}

/** `6,439 bags`. */
export function lineBagsWords(bags: number): string {
  return `${formatCount(bags)} bags`;
}

/** What the station's slider says: where it is and what is read there. */
export function readWords(shape: LessonShape, system: UnitSystem): string {
  const { choice, groundM, heightM } = shape;
  return `${stationWords(choice.stationM, system)}, ground ${heightWords(groundM, system)}, height ${heightWords(heightM, system)}`;
}

/** What a screen reader hears of the drawings. */
export function shapeSpoken(shape: LessonShape, system: UnitSystem): string {
  const { heightM, baseM, bagsPerM } = shape;
  if (!(heightM > 0)) return LESSON.nothing;
  return `Height ${heightWords(heightM, system)}, ${baseWords(baseM, system)}, ${bagsWords(bagsPerM, system)} bags per ${lengthName(system)}`;
}

/** The station that is read, as its own slider is called. */
export const STATION_NAME = "Station that is read";
