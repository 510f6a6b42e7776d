import type { DrawnBody } from "../../shared/holding/standing-at.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { formatLineForce, type UnitSystem } from "../../shared/units.ts";
import {
  type Obstacle,
  type PlacedLabel,
  placeLabels,
  type WantedLabel,
} from "../drawing/place-labels.ts";
import { SECTION_TYPE_PX, type SectionFrame } from "../drawing/section/section-frame.ts";
import { groundAcross } from "../drawing/section/section-ground.ts";
import { faceAt } from "../drawing/section/section-outline.ts";
import { textWidth } from "../drawing/text-width.ts";

const LINE_PX = 13;
/** Pressures inside the triangle, drawn as thin arrows. */
const PRESSURES = 4;
/** Room kept at the left edge, and under the uplift for its arrow and its words, pixels. */
const EDGE_PX = 6;
const UNDER_PX = 22;
const TAIL_PX = 12;
/** Between two labels side by side, so that they are not read as one. */
const APART_PX = 8;
const BODY_BOXES = 8;
const IN_ORDER = ["thrust", "weight", "uplift"];

export interface Arrow {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
}

/** The forces on a levee cut across, in pixels of its drawing. */
export interface FreeBodyPicture {
  /** Triangle of the water's pressure on the upright plane at the waterside end of the base. */
  readonly thrustArea: string;
  readonly pressures: readonly Arrow[];
  /** The resultant, at a third of the depth. */
  readonly thrust: Arrow | null;
  readonly upliftArea: string;
  readonly uplift: Arrow | null;
  readonly weight: Arrow;
  /** The plane it may slide on. */
  readonly base: string;
  /** The landside toe, about which it would turn. */
  readonly turns: { readonly x: number; readonly y: number };
  readonly labels: readonly PlacedLabel[];
}

/**
 * Lays the forces out on a section: distances to the section's scale, pressures as their depth of water, to
 * the same scale where there is room. Null where the ground at the landside toe is not known.
 * @param taken labels that stand already
 */
export function freeBodyPicture(
  cross: CrossSection,
  body: DrawnBody,
  frame: SectionFrame,
  system: UnitSystem,
  taken: readonly PlacedLabel[],
): FreeBodyPicture | null {
  const { pxPerM } = frame;
  const landM = cross.waterSide === 1 ? cross.toeRightM : cross.toeLeftM;
  const land = { x: frame.x(-cross.waterSide * landM), y: landToeY(cross, landM, frame) };
  if (Number.isNaN(land.y)) return null;
  const foot = { x: land.x - body.baseM * pxPerM, y: land.y - body.toeDropM * pxPerM };
  const { waterDepthM, toeDropM, uplift } = body;
  const landDepthM = uplift === "full" ? waterDepthM + toeDropM : 0;
  const roomLeft = foot.x - EDGE_PX;
  const roomBelow = frame.heightPx - UNDER_PX - Math.max(foot.y, land.y);
  const deepestPx = Math.max(waterDepthM, landDepthM) * pxPerM;
  const pressureScale =
    deepestPx > 0
      ? Math.max(
          0.15,
          Math.min(1, roomLeft / (waterDepthM * pxPerM), Math.max(0, roomBelow) / deepestPx),
        )
      : 1;
  const along = (armM: number) => {
    const share = armM / Math.hypot(body.baseM, toeDropM);
    return { x: land.x + (foot.x - land.x) * share, y: land.y + (foot.y - land.y) * share };
  };
  const hasWater = waterDepthM > 0;
  const pressPx = (depthM: number) => depthM * pxPerM * pressureScale;
  const surfaceY = foot.y - waterDepthM * pxPerM;
  const thrustY = land.y - body.thrustArmM * pxPerM;
  const up = along(body.upliftArmM);
  const upliftPx = pressPx(
    waterDepthM + (landDepthM - waterDepthM) * shareAt(up.x, foot.x, land.x),
  );
  const weightX = land.x - body.weightArmM * pxPerM;
  const weightShare = (land.x - weightX) / Math.max(1e-9, land.x - foot.x);
  const weightY = land.y + (foot.y - land.y) * weightShare;
  const crestY = frame.y(cross.crestM);
  const weight = {
    fromX: weightX,
    fromY: crestY + (weightY - crestY) * 0.3,
    toX: weightX,
    toY: weightY,
  };
  const thrust = hasWater
    ? {
        fromX: Math.max(2, foot.x - Math.max(26, (pressPx(waterDepthM) * 2) / 3)),
        fromY: thrustY,
        toX: foot.x,
        toY: thrustY,
      }
    : null;
  const lift =
    body.upliftNPerM > 0
      ? { fromX: up.x, fromY: up.y + Math.max(TAIL_PX, upliftPx), toX: up.x, toY: up.y }
      : null;
  const force = (name: string, nPerM: number) => `${name} ${formatLineForce(nPerM, system)}`;
  const place = (labels: readonly WantedLabel[], standing: readonly PlacedLabel[]) =>
    placeLabels(
      labels,
      [...obstaclesOf({ thrust, weight, lift, taken: standing }), ...bodyOf(cross, frame)],
      frame.bounds,
    );
  const over = place([weightLabel(force("weight", body.weightNPerM), weight, crestY)], taken);
  const around = place(
    [
      ...(thrust ? [thrustLabel(force("thrust", body.thrustNPerM), thrust, surfaceY, foot.y)] : []),
      ...(lift ? [upliftLabel(force("uplift", body.upliftNPerM), lift)] : []),
    ],
    [...taken, ...over],
  );
  return {
    thrustArea: hasWater
      ? polygon([
          [foot.x, surfaceY],
          [foot.x, foot.y],
          [foot.x - pressPx(waterDepthM), foot.y],
        ])
      : "",
    pressures: hasWater ? pressuresOf(foot, surfaceY, pressPx(waterDepthM)) : [],
    thrust,
    upliftArea: lift
      ? polygon([
          [foot.x, foot.y],
          [land.x, land.y],
          [land.x, land.y + pressPx(landDepthM)],
          [foot.x, foot.y + pressPx(waterDepthM)],
        ])
      : "",
    uplift: lift,
    weight,
    base: `M${px(foot.x)} ${px(foot.y)}L${px(land.x)} ${px(land.y)}`,
    turns: { x: px(land.x), y: px(land.y) },
    labels: [...over, ...around].sort((a, b) => IN_ORDER.indexOf(a.key) - IN_ORDER.indexOf(b.key)),
  };
}

function landToeY(cross: CrossSection, landM: number, frame: SectionFrame): number {
  return frame.y(groundAcross(cross)(-cross.waterSide * landM));
}

/** How far a place lies from the foot to the landside toe, 0..1. */
function shareAt(x: number, footX: number, landX: number): number {
  return (x - footX) / Math.max(1e-9, landX - footX);
}

function pressuresOf(
  foot: { readonly x: number; readonly y: number },
  surfaceY: number,
  footPx: number,
): Arrow[] {
  return Array.from({ length: PRESSURES }, (_, i) => {
    const share = (i + 1) / PRESSURES;
    const y = surfaceY + (foot.y - surfaceY) * share;
    return { fromX: foot.x - footPx * share, fromY: y, toX: foot.x, toY: y };
  });
}

function obstaclesOf(drawn: {
  readonly thrust: Arrow | null;
  readonly weight: Arrow;
  readonly lift: Arrow | null;
  readonly taken: readonly PlacedLabel[];
}): Obstacle[] {
  const never = Number.POSITIVE_INFINITY;
  const arrows = [drawn.thrust, drawn.weight, drawn.lift].filter((each) => each !== null);
  return [
    ...drawn.taken.map(({ box }) => ({
      ...box,
      left: box.left - APART_PX,
      right: box.right + APART_PX,
      cost: never,
    })),
    ...arrows.map(({ fromX, fromY, toX, toY }) => ({
      left: Math.min(fromX, toX) - 4,
      right: Math.max(fromX, toX) + 4,
      top: Math.min(fromY, toY) - 4,
      bottom: Math.max(fromY, toY) + 4,
      cost: 2,
    })),
  ];
}

/** The levee itself, as boxes one over the other. */
function bodyOf(cross: CrossSection, frame: SectionFrame): Obstacle[] {
  const { waterSide, crestM, parts } = cross;
  const landSide = waterSide === 1 ? -1 : 1;
  const stepM = (crestM - frame.footM) / BODY_BOXES;
  return Array.from({ length: BODY_BOXES }, (_, k) => {
    const middleM = crestM - (k + 0.5) * stepM;
    const [water, land] = [faceAt(parts, middleM, waterSide), faceAt(parts, middleM, landSide)];
    if (water === null || land === null) return [];
    return {
      left: frame.x(waterSide * water),
      right: frame.x(landSide * land),
      top: frame.y(crestM - k * stepM),
      bottom: frame.y(crestM - (k + 1) * stepM),
      cost: 0.2,
    };
  }).flat();
}

/** Over the water's surface at the left, or under the ground there. */
function thrustLabel(text: string, thrust: Arrow, surfaceY: number, footY: number): WantedLabel {
  const width = textWidth(text, SECTION_TYPE_PX);
  const left = Math.max(EDGE_PX, thrust.toX - width - 4);
  const tops = [
    ...[0, 1, 2, 3].map((row) => surfaceY - (LINE_PX + 1) * (row + 1) - 3),
    ...[0, 1, 2, 3].map((row) => footY + 4 + LINE_PX * row),
  ];
  return {
    key: "thrust",
    text,
    spots: [left, EDGE_PX].flatMap((x) =>
      tops.map((top, row) => ({
        left: x,
        right: x + width,
        top,
        bottom: top + LINE_PX,
        cost: row * 4,
      })),
    ),
  };
}

/** Over the crown, or beside the body on the land side. */
function weightLabel(text: string, weight: Arrow, crestY: number): WantedLabel {
  const width = textWidth(text, SECTION_TYPE_PX);
  const spot = (left: number, top: number, cost: number) => ({
    ...{ left, right: left + width, top, bottom: top + LINE_PX, cost },
  });
  return {
    key: "weight",
    text,
    spots: [
      spot(weight.fromX - width / 2, crestY - LINE_PX - 5, 0),
      spot(weight.fromX + 14, crestY - LINE_PX - 3, 2),
      ...[0, 1, 2].map((row) => spot(weight.fromX + 44, crestY + 2 + row * LINE_PX, 20 + row)),
      spot(weight.fromX + 6, weight.fromY, 60),
    ],
  };
}

/** Beside the tail of the arrow, under the base. */
function upliftLabel(text: string, lift: Arrow): WantedLabel {
  const width = textWidth(text, SECTION_TYPE_PX);
  const spots = [0, 1, 2, 3, -1].flatMap((row) => {
    const top = lift.fromY - LINE_PX / 2 + row * LINE_PX;
    return [lift.fromX + 8, lift.fromX - 8 - width, lift.fromX - width / 2].map((left) => ({
      ...{ left, right: left + width, top, bottom: top + LINE_PX },
      cost: Math.abs(row) * 4,
    }));
  });
  return { key: "uplift", text, spots };
}

function polygon(points: readonly (readonly [number, number])[]): string {
  return `M${points.map(([x, y]) => `${px(x)} ${px(y)}`).join("L")}Z`;
}

function px(value: number): number {
  return Math.round(value * 100) / 100;
}
