import type { Section } from "../../../shared/plan.ts";
import type { CrossSection } from "../../../shared/sizing-types.ts";
import type { Box } from "../place-labels.ts";
import { lowestUnderBase } from "./section-ground.ts";
import { spanOf } from "./section-outline.ts";

export const SECTION_TYPE_PX = 12;
/** Room round the levee for what is written there, pixels. */
export interface SectionMargins {
  readonly waterPx: number;
  readonly landPx: number;
  readonly abovePx: number;
  readonly belowPx: number;
}

/** Room for the dimensions: the height's beside the landside toe, the base's below. */
const FOR_DIMENSIONS: SectionMargins = { waterPx: 34, landPx: 62, abovePx: 12, belowPx: 46 };
/** Room for the forces in place of the dimensions: the thrust on the water side, the weight above. */
export const FOR_FORCES: SectionMargins = { waterPx: 92, landPx: 30, abovePx: 30, belowPx: 42 };
/** A levee is never drawn larger than this, pixels per metre, so that a low one looks low. */
const LARGEST_PX_PER_M = 115;

/** The size a drawing must have room for, metres. Given for a whole line, its sections share one scale. */
export interface SectionRoomNeeded {
  readonly baseM: number;
  readonly heightM: number;
}

/** Where everything of a section lies. The water side is always drawn on the left. */
export interface SectionFrame {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerM: number;
  /** Pixels of an offset (positive left of chainage) and of an elevation. */
  x(offsetM: number): number;
  y(elevationM: number): number;
  /** Offset drawn at the left and at the right edge, metres towards the water. */
  readonly bounds: Box;
  /** Elevation the drawing stands on: the lowest ground under the base, or what is known near it. */
  readonly footM: number;
}

/** Pixels per metre at which a levee of this size fills the room it has; the same across and up. */
export function sectionScale(
  needed: SectionRoomNeeded,
  section: Section,
  widthPx: number,
  heightPx: number,
  margins: SectionMargins = FOR_DIMENSIONS,
): number {
  const { waterPx, landPx, abovePx, belowPx } = margins;
  const acrossM = needed.baseM + section.sheet.toeExtensionM;
  const across = (widthPx - waterPx - landPx) / Math.max(0.5, acrossM);
  const up = (heightPx - abovePx - belowPx) / Math.max(0.15, needed.heightM);
  return Math.max(4, Math.min(across, up, LARGEST_PX_PER_M));
}

/** Lays out a section in so many pixels. */
export function sectionFrame(
  cross: CrossSection,
  section: Section,
  widthPx: number,
  heightPx: number,
  needed: SectionRoomNeeded,
  margins: SectionMargins = FOR_DIMENSIONS,
): SectionFrame {
  const { waterPx, landPx, abovePx, belowPx } = margins;
  const { waterM, landM } = spanOf(cross);
  const own = { baseM: waterM + landM, heightM: cross.greatestHeightM ?? 0 };
  const roomFor = {
    baseM: Math.max(own.baseM, needed.baseM),
    heightM: Math.max(own.heightM, needed.heightM),
  };
  const pxPerM = sectionScale(roomFor, section, widthPx, heightPx, margins);
  const basePx = (waterM + landM + section.sheet.toeExtensionM) * pxPerM;
  const spare = Math.max(0, widthPx - waterPx - landPx - basePx);
  const centrePx = waterPx + spare / 2 + (waterM + section.sheet.toeExtensionM) * pxPerM;
  const footM = footOf(cross);
  const topPx = abovePx + (heightPx - abovePx - belowPx - roomFor.heightM * pxPerM) * 0.6;
  const footPx = Math.min(heightPx - belowPx, topPx + roomFor.heightM * pxPerM);
  return {
    widthPx,
    heightPx,
    pxPerM,
    x: (offsetM) => centrePx - cross.waterSide * offsetM * pxPerM,
    y: (elevationM) => footPx - (elevationM - footM) * pxPerM,
    bounds: { left: 2, top: 2, right: widthPx - 2, bottom: heightPx - 2 },
    footM,
  };
}

function footOf(cross: CrossSection): number {
  const lowest = lowestUnderBase(cross);
  if (Number.isFinite(lowest)) return lowest;
  const known = Array.from(cross.groundM).filter((level) => !Number.isNaN(level));
  return known.length > 0 ? Math.min(...known) : cross.crestM;
}
