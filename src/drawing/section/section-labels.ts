import type { CrossSection } from "../../../shared/sizing-types.ts";
import { formatLength, lengthIn, type UnitSystem } from "../../../shared/units.ts";
import { baseWidths, toesOf } from "../../../shared/words/base-width.ts";
import {
  type Box,
  type Obstacle,
  type PlacedLabel,
  placeLabels,
  type Spot,
  type WantedLabel,
} from "../place-labels.ts";
import { textWidth } from "../text-width.ts";
import { SECTION_TYPE_PX, type SectionFrame } from "./section-frame.ts";
import { groundAcross } from "./section-ground.ts";
import { faceAt, spanOf } from "./section-outline.ts";

const LINE_PX = 15;
/** How far the limit's line stands out of the water-side face, pixels. */
const LIMIT_OVERHANG_PX = 10;
/** A face is looked up so far below an edge, metres, so that it is that of the body under it. */
const BELOW_M = 1e-6;
/** Slices of the body, from top to foot. */
const SLICES = 8;

/** Places of the dimension lines, pixels. */
export interface SectionDimensions {
  /** Upright dimension of the greatest height. */
  readonly heightX: number;
  readonly crestY: number;
  readonly footY: number;
  /** Level dimension of the base. */
  readonly baseY: number;
  readonly waterToeX: number;
  readonly landToeX: number;
  readonly centreX: number;
  /** Where the limit lies above the foot; null when the levee stays under it. */
  readonly limitY: number | null;
  /** Where the limit's line begins, at the water-side face, and where the body ends under its words. */
  readonly limitFromX: number;
  readonly limitToX: number;
  /** The body in slices from the top down: what labels beside the levee had better not cover. */
  readonly slices: readonly Box[];
}

/** Where the dimensions go, with the limit of the cut's own reach; null when there is nothing to measure. */
export function sectionDimensions(
  cross: CrossSection,
  frame: SectionFrame,
): SectionDimensions | null {
  if (cross.greatestHeightM === null || cross.greatestHeightM <= 0) return null;
  const toes = [frame.x(cross.toeLeftM), frame.x(-cross.toeRightM)];
  const landToeX = Math.max(...toes);
  const footY = frame.y(frame.footM);
  const { waterSide, limitM } = cross;
  const limitAtM = Math.min(frame.footM + limitM, cross.crestM) - BELOW_M;
  const faceX = (side: 1 | -1, atM: number) =>
    frame.x(side * (faceAt(cross.parts, atM, side) ?? cross.crownM / 2));
  const landSide = waterSide === 1 ? -1 : 1;
  const landX = frame.x(-waterSide * spanOf(cross).landM);
  return {
    heightX: Math.min(Math.max(landToeX, landX) + 20, frame.widthPx - 46),
    crestY: frame.y(cross.crestM),
    footY,
    baseY: footY + 21,
    waterToeX: Math.min(...toes),
    landToeX,
    centreX: frame.x(0),
    limitY: cross.greatestHeightM > limitM ? frame.y(frame.footM + limitM) : null,
    limitFromX: faceX(waterSide, limitAtM) - LIMIT_OVERHANG_PX,
    limitToX: faceX(landSide, limitAtM - LINE_PX / frame.pxPerM),
    slices: Array.from({ length: SLICES }, (_, k) => {
      const [topM, bottomM] = [k, k + 1].map(
        (at) => cross.crestM + (at / SLICES) * (frame.footM - cross.crestM),
      ) as [number, number];
      const [left, right] = [
        faceX(waterSide, bottomM + BELOW_M),
        faceX(landSide, bottomM + BELOW_M),
      ];
      return { left, right, top: frame.y(topM), bottom: frame.y(bottomM) };
    }),
  };
}

/**
 * The words of a section, none touching another nor standing on the bags.
 * @param height what its greatest height is called; the figure to the nearest when left out
 */
export function sectionLabels(
  cross: CrossSection,
  frame: SectionFrame,
  dimensions: SectionDimensions | null,
  unitSystem: UnitSystem,
  halfWidths: boolean,
  height = formatLength(cross.greatestHeightM ?? 0, unitSystem),
): PlacedLabel[] {
  const ground = groundAcross(cross);
  const levelAt = (xPx: number) => {
    const offset = (cross.waterSide * (frame.x(0) - xPx)) / frame.pxPerM;
    const level = ground(offset);
    return Number.isNaN(level) ? frame.y(frame.footM) : frame.y(level);
  };
  const labels: WantedLabel[] = [
    ...(dimensions ? dimensionLabels(cross, dimensions, unitSystem, halfWidths, height) : []),
    sideLabel("water", "Water side", 8, frame, levelAt, frame.y(cross.waterM)),
    sideLabel("land", "Land side", null, frame, levelAt, null),
  ];
  const obstacles = [
    ...(dimensions ? leveeObstacles(dimensions) : []),
    ...(dimensions ? [surfaceObstacle(frame.y(cross.waterM), dimensions)] : []),
    ...groundObstacles(frame, levelAt),
  ];
  return placeLabels(labels, obstacles, frame.bounds);
}

function dimensionLabels(
  cross: CrossSection,
  dimensions: SectionDimensions,
  system: UnitSystem,
  halfWidths: boolean,
  height: string,
): WantedLabel[] {
  const { heightX, crestY, footY, baseY, waterToeX, landToeX, centreX, limitY } = dimensions;
  const { water, land, inUnit } = baseWidths(toesOf(cross), system);
  const middleY = (crestY + footY) / 2;
  const heightSpots = [0, 0.15, -0.15, 0.3, -0.3, 0.42, -0.42, 0.6, -0.6].map((share) => ({
    ...beside(heightX + 5, middleY + share * (footY - crestY), height),
    cost: Math.abs(share) * 8,
  }));
  const labels: WantedLabel[] = [
    label("height", height, heightSpots),
    label("base", `base ${inUnit}`, []),
    label("toe", water, []),
    label("toe", land, []),
  ];
  const rooms = [centreX - waterToeX, landToeX - centreX];
  const fit =
    halfWidths &&
    rooms.every((px, side) => px > textWidth(labels[2 + side]!.text, SECTION_TYPE_PX) + 6);
  labels[1] = centred(labels[1]!, (waterToeX + landToeX) / 2, baseY + 2);
  if (fit) {
    labels[2] = centred(labels[2]!, (waterToeX + centreX) / 2, baseY - LINE_PX - 1);
    labels[3] = centred(labels[3]!, (centreX + landToeX) / 2, baseY - LINE_PX - 1);
  }
  if (limitY !== null) {
    const whole = `limit ${lengthIn(cross.limitM, system).toFixed(system === "us" ? 1 : 2)}`;
    const width = textWidth(whole, SECTION_TYPE_PX);
    const isLand = heightX - dimensions.limitToX > width + 8;
    const isWater = dimensions.limitFromX > width + 8;
    const text = isLand || isWater ? whole : "limit";
    const left = isLand || !isWater ? heightX - textWidth(text, SECTION_TYPE_PX) - 4 : null;
    const spots = [-7, 8, -17, 18].map((offPx) => ({
      ...beside(left ?? dimensions.limitFromX - width - 4, limitY + offPx, text),
      cost: Math.abs(offPx) / 10,
    }));
    labels.push(label("limit", text, spots));
  }
  return labels.map((each, index) => ({ ...each, key: `${each.key}-${index}` }));
}

function label(key: string, text: string, spots: readonly Spot[]): WantedLabel {
  return { key, text, spots };
}

function beside(left: number, middleY: number, text: string): Spot {
  const width = textWidth(text, SECTION_TYPE_PX);
  return {
    left,
    right: left + width,
    top: middleY - LINE_PX / 2,
    bottom: middleY + LINE_PX / 2,
    cost: 0,
  };
}

function centred(label: WantedLabel, x: number, top: number): WantedLabel {
  const half = textWidth(label.text, SECTION_TYPE_PX) / 2;
  return {
    ...label,
    spots: [{ left: x - half, right: x + half, top, bottom: top + LINE_PX, cost: 0 }],
  };
}

function sideLabel(
  key: string,
  text: string,
  leftPx: number | null,
  frame: SectionFrame,
  levelAt: (xPx: number) => number,
  surfaceY: number | null,
): WantedLabel {
  const width = textWidth(text, SECTION_TYPE_PX);
  const left = leftPx ?? frame.widthPx - width - 5;
  const levels = [0, 0.5, 1].map((share) => levelAt(left + share * width));
  const over = Math.min(...levels, surfaceY ?? Infinity);
  const under = Math.max(...levels);
  const box = { left, right: left + width };
  const isWater = surfaceY !== null;
  const above = { ...box, top: over - LINE_PX - 3, bottom: over - 3, cost: isWater ? 0 : 10 };
  const below = [4, 14, 24, 34, 44, 54, 64, 74].map((downPx) => ({
    ...box,
    top: under + downPx,
    bottom: under + downPx + LINE_PX,
    cost: (isWater ? 10 : 0) + downPx / 10,
  }));
  return { key, text, spots: [above, ...below] };
}

/** The water's surface, which had better not be drawn through words. */
function surfaceObstacle(surfaceY: number, { waterToeX, slices }: SectionDimensions): Obstacle {
  const right = Math.max(waterToeX, slices[SLICES / 2 - 1]!.left);
  return { left: 0, right, top: surfaceY - 1, bottom: surfaceY + 1, cost: 0.5 };
}

function groundObstacles(frame: SectionFrame, levelAt: (xPx: number) => number): Obstacle[] {
  const stepPx = 8;
  return Array.from({ length: Math.ceil(frame.widthPx / stepPx) }, (_, i) => {
    const left = i * stepPx;
    const y = levelAt(left + stepPx / 2);
    return { left, right: left + stepPx, top: y - 2, bottom: y + 2, cost: 0.5 };
  });
}

function leveeObstacles(dimensions: SectionDimensions): Obstacle[] {
  const { crestY, footY, baseY, waterToeX, landToeX, centreX, heightX, limitY } = dimensions;
  return [
    ...dimensions.slices.map((slice) => ({ ...slice, cost: 1 })),
    { left: waterToeX - 6, right: landToeX + 6, top: baseY - 6, bottom: baseY + 6, cost: 4 },
    { left: heightX - 6, right: heightX + 4, top: crestY - 3, bottom: footY + 3, cost: 4 },
    ...[crestY, limitY ?? crestY].map((y) => ({
      left: centreX,
      right: heightX,
      top: y - 1,
      bottom: y + 1,
      cost: 0.5,
    })),
  ];
}
