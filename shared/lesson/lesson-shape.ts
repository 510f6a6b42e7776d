import { crossSection } from "../cross-section.ts";
import { DEFAULT_SECTION, DEFAULT_WATER, EMPTY_PLAN } from "../defaults.ts";
import type { GroundSampler } from "../ground.ts";
import { HEIGHT_CLASSES, heightClass } from "../height-class.ts";
import type { Alignment, Plan, Practice, Section } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";
import { bagsOrderedFor, bagsPlacedFor } from "../quantities.ts";
import { levelAreaM2 } from "../section.ts";
import { sizeLine } from "../size-line.ts";
import type { CrossSection, SizedLine } from "../sizing-types.ts";
import type { LessonChoice, TeachingGround } from "./teaching-ground.ts";

/** The teaching ground lies nowhere: its corners are meters already. */
const NOWHERE: PlanPlane = {
  origin: [0, 0],
  toPlane: ([x, y]) => [x, y],
  toLonLat: (xM, yM) => [xM, yM],
};

/** Fine enough for the colors along the line to change where the height does. */
const CELL_M = 0.2;
const MARGIN_M = 0.5;

/** A levee on the teaching ground, sized as a line of a plan is, and its figures at the station that is read. */
export interface LessonShape {
  readonly choice: LessonChoice;
  readonly line: SizedLine;
  readonly cross: CrossSection;
  readonly section: Section;
  readonly practice: Practice;
  readonly topM: number;
  readonly groundM: number;
  readonly heightM: number;
  /** Height at the start of the line. */
  readonly startHeightM: number;
  /** Height at the end of the line. */
  readonly endHeightM: number;
  readonly baseM: number;
  readonly areaM2: number;
  /** Bags per meter of line, not rounded: placed, and with spares. */
  readonly placedPerM: number;
  readonly bagsPerM: number;
  /** Bags of the whole line, spares included. */
  readonly lineBags: number;
  /** Whether it is over the height limit at the station that is read. */
  readonly isOver: boolean;
}

/** Sizes the levee of a choice. */
export function lessonShape(teaching: TeachingGround, choice: LessonChoice): LessonShape {
  const plan = lessonPlan(teaching, choice);
  const { section, practice } = plan;
  const alignment = plan.alignments[0]!;
  const ground: GroundSampler = {
    heightAt: (xM) => teaching.startGroundM - choice.slope * xM,
    cellM: CELL_M,
  };
  const inputs = { plan, alignment, plane: NOWHERE, ground };
  const line = sizeLine({ ...inputs, live: true });
  const cross = crossSection({ ...inputs, chainageM: choice.stationM, marginM: MARGIN_M });
  const heightM = cross.heightM ?? Number.NaN;
  const areaM2 = cross.areaM2 ?? Number.NaN;
  return {
    ...{ choice, line, cross, section, practice, heightM, areaM2 },
    topM: cross.crestM,
    groundM: ground.heightAt(choice.stationM, 0),
    startHeightM: line.walk.heightM[0]!,
    endHeightM: line.walk.heightM.at(-1)!,
    baseM: cross.baseM ?? Number.NaN,
    placedPerM: bagsPlacedFor(areaM2, section),
    bagsPerM: bagsOrderedFor(areaM2, section, practice),
    lineBags: line.totals.bags,
    isOver: heightClass(heightM, practice.limitM) === HEIGHT_CLASSES - 1,
  };
}

/** Bags per meter, spares included, of a levee on level ground. */
export function bagsAtHeight({ section, practice }: LessonShape, heightM: number): number {
  return bagsOrderedFor(levelAreaM2(section, heightM), section, practice);
}

function lessonPlan(teaching: TeachingGround, choice: LessonChoice): Plan {
  const line: Alignment = {
    id: "lesson",
    name: "Lesson",
    kind: "line",
    corners: [
      [0, 0],
      [teaching.lengthM, 0],
    ],
    reachBreaksM: [],
  };
  const { riverM, freeboardM, baseRatio } = choice;
  return {
    ...EMPTY_PLAN,
    alignments: [line],
    water: { ...DEFAULT_WATER, elevationM: riverM, freeboardM },
    section: { ...DEFAULT_SECTION, baseRatio },
  };
}
