import { CUBIC_FOOT_M3 } from "../constants.ts";
import { areaIn, lengthIn } from "../units.ts";
import type { LessonShape } from "./lesson-shape.ts";
import type { TeachingGround } from "./teaching-ground.ts";

/**
 * The hand calculation at one station, in feet and square feet or meters and square meters. Every figure is rounded
 * as it is written down, and the next line goes on from the rounded one.
 */
export interface HandCalculation {
  readonly river: number;
  readonly freeboard: number;
  readonly top: number;
  readonly startGround: number;
  readonly fall: number;
  readonly ground: number;
  /** 0 where the top lies under the ground. */
  readonly height: number;
  readonly ratio: number;
  readonly crown: number;
  readonly base: number;
  /** The base is the crown, where some times the height would be less. */
  readonly isCrownWide: boolean;
  readonly area: number;
  /** Of one placed bag, cubic feet or cubic meters. */
  readonly bagVolume: number;
  /** Per foot or meter of line. */
  readonly placed: number;
  readonly spareShare: number;
  readonly bags: number;
}

/** Digits written after the point. */
export const HAND_DIGITS = {
  us: { length: 2, area: 2, bagVolume: 3, bags: 1 },
  metric: { length: 2, area: 3, bagVolume: 4, bags: 1 },
} as const;

/** Calculates by hand what the program calculates for a shape. */
export function byHand(teaching: TeachingGround, shape: LessonShape): HandCalculation {
  const { system } = teaching;
  const { choice, section, practice } = shape;
  const digits = HAND_DIGITS[system];
  const length = (m: number) => onPaper(lengthIn(m, system), digits.length);
  const sum = (value: number) => onPaper(value, digits.length);
  const river = length(choice.riverM);
  const freeboard = length(choice.freeboardM);
  const top = sum(river + freeboard);
  const startGround = length(teaching.startGroundM);
  const fall = length(choice.slope * choice.stationM);
  const ground = sum(startGround - fall);
  const height = Math.max(0, sum(top - ground));
  const ratio = choice.baseRatio;
  const crown = length(section.crownM);
  const sloped = sum(ratio * height);
  const isCrownWide = height > 0 && sloped < crown;
  const base = isCrownWide ? crown : sloped;
  const area = onPaper(((base + crown) / 2) * height, digits.area);
  const volumeIn = system === "us" ? CUBIC_FOOT_M3 : 1;
  const bagVolume = onPaper(section.bag.placedVolumeM3 / volumeIn, digits.bagVolume);
  const placed = onPaper(area / bagVolume, digits.bags);
  const { spareShare } = practice;
  const bags = onPaper(placed * (1 + spareShare), digits.bags);
  return {
    ...{
      river,
      freeboard,
      top,
      startGround,
      fall,
      ground,
      height,
      ratio,
      crown,
      base,
      isCrownWide,
    },
    ...{ area, bagVolume, placed, spareShare, bags },
  };
}

/** The program's figures of a shape in the units of the hand calculation, not rounded. */
export function byProgram(teaching: TeachingGround, shape: LessonShape) {
  const { system } = teaching;
  const length = (m: number) => lengthIn(m, system);
  const perLength = (perM: number) => perM / lengthIn(1, system);
  return {
    top: length(shape.topM),
    ground: length(shape.groundM),
    height: length(shape.heightM),
    base: length(shape.baseM),
    area: areaIn(shape.areaM2, system),
    placed: perLength(shape.placedPerM),
    bags: perLength(shape.bagsPerM),
  };
}

/** Rounds half up, as on paper; what binary fractions are short of a half counts as the half. */
function onPaper(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.floor(value * scale + 0.5 + 1e-6) / scale;
}
