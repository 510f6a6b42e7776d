import type { Section } from "../../../shared/plan.ts";
import { sectionById } from "../../../shared/sections.ts";
import type { CrossSection } from "../../../shared/sizing-types.ts";
import { TRENCH_OVER_M } from "../../../shared/words/laying.ts";
import type { SectionFrame } from "./section-frame.ts";
import { groundAcross, lowestUnderBase } from "./section-ground.ts";
import { faceAt, faceRun } from "./section-outline.ts";

/** A bag seen from its end, in the pixels of a frame: its middle, its size, and how far it is tilted, degrees. */
interface LaidBag {
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly tiltDeg: number;
}

/** What crews lay beside the levee's own bags. */
export interface LaidBeside {
  /** A bag on each edge of the poly sheeting: on the ground before the water side's toe, and at its end on the land side. */
  readonly anchors: readonly LaidBag[];
  /** The bond trench, filled with bags; none where the levee is not over 3 ft. */
  readonly trench: readonly LaidBag[];
}

/** The middle of what NDSU-11 gives for a bond trench: 18 to 24 in wide, 4 to 6 in deep, metres. */
const TRENCH_M = { width: 0.5334, depth: 0.127 } as const;
const NOTHING: LaidBeside = { anchors: [], trench: [] };

/** The anchor bags of the poly sheeting and the bond trench of a section; nothing where the levee is not of bags. */
export function laidBeside(cross: CrossSection, section: Section, frame: SectionFrame): LaidBeside {
  const type = sectionById(cross.section);
  const isOfBags = cross.parts.some(({ material }) => material === "bags");
  if (!isOfBags || !type.ok || cross.greatestHeightM === null) return NOTHING;
  return {
    anchors: type.value.sheet
      ? [footAnchor(cross, section, frame), topAnchor(cross, section, frame)]
      : [],
    trench: cross.greatestHeightM > TRENCH_OVER_M + 1e-9 ? trenchBags(cross, frame) : [],
  };
}

function footAnchor(cross: CrossSection, { bag, sheet }: Section, frame: SectionFrame): LaidBag {
  const side = cross.waterSide;
  const toeM = side === 1 ? cross.toeLeftM : cross.toeRightM;
  const widthM = Math.min(bag.placedWidthM, sheet.toeExtensionM);
  const offset = side * (toeM + sheet.toeExtensionM - widthM / 2);
  const ground = groundAcross(cross);
  const known = [ground(offset), ground(side * toeM), lowestUnderBase(cross)];
  const groundM = known.find((m) => !Number.isNaN(m))!;
  return {
    ...{ x: frame.x(offset), y: frame.y(groundM + bag.courseM / 2) - 2, tiltDeg: 0 },
    ...{ widthPx: widthM * frame.pxPerM, heightPx: bag.courseM * frame.pxPerM },
  };
}

/** On the end of the sheeting, which hangs over the land side's face. */
function topAnchor(cross: CrossSection, { bag, sheet }: Section, frame: SectionFrame): LaidBag {
  const { waterSide, crestM, parts } = cross;
  const landSide = waterSide === 1 ? -1 : 1;
  const run = faceRun(cross, landSide);
  const top = faceAt(parts, crestM - 1e-6, landSide) ?? cross.crownM / 2;
  const slope = Math.hypot(1, run) || 1;
  const alongM = Math.max(0, sheet.tailM - bag.placedWidthM / 4);
  const [outM, downM] = [(alongM * run) / slope, alongM / slope];
  const liftM = bag.courseM;
  const offset = landSide * (top + (run * bag.courseM) / 2 + outM + liftM / slope / 2);
  return {
    x: frame.x(offset),
    y: frame.y(crestM - downM + (liftM * run) / slope) - 1.5,
    widthPx: bag.placedWidthM * frame.pxPerM,
    heightPx: bag.courseM * frame.pxPerM,
    tiltDeg: (Math.atan2(1, run || 1e-9) * 180) / Math.PI,
  };
}

function trenchBags(cross: CrossSection, frame: SectionFrame): LaidBag[] {
  const middleM = (cross.toeLeftM - cross.toeRightM) / 2;
  const groundM = groundAcross(cross)(middleM);
  if (Number.isNaN(groundM)) return [];
  const eachM = TRENCH_M.width / 2;
  return [-0.5, 0.5].map((share) => ({
    ...{
      x: frame.x(middleM + share * eachM),
      y: frame.y(groundM - TRENCH_M.depth / 2),
      tiltDeg: 0,
    },
    ...{ widthPx: eachM * frame.pxPerM, heightPx: TRENCH_M.depth * frame.pxPerM },
  }));
}
