import type { Bag } from "../../../shared/plan.ts";
import type { SectionPart } from "../../../shared/sections/types.ts";
import type { CrossSection } from "../../../shared/sizing-types.ts";
import { type Across, groundAcross, groundBends, lowestUnderBase } from "./section-ground.ts";
import { insideAt } from "./section-outline.ts";

/** One bag of a drawn section: offsets across the line and elevations, metres. */
export interface PlacedBag {
  /** Counted from the lowest, 0. */
  readonly course: number;
  readonly fromM: number;
  readonly toM: number;
  readonly bottomM: number;
  readonly topM: number;
}

export interface BagCourses {
  /** Lowest ground under the base, metres. */
  readonly lowestM: number;
  /** Thickness of a course as drawn, metres: the height at the centre line shared equally. */
  readonly courseM: number;
  readonly bags: readonly PlacedBag[];
}

/** A stretch narrower than this many bags is filled by one, flattened a little wider. */
const SINGLE_SHARE = 1.35;
/** Least width of a bag at the end of a course, as a share of a bag. */
const LEAST_END_SHARE = 0.34;
/** Least part of a course's thickness that must clear the ground for a bag to be laid. */
const LEAST_CLEAR_SHARE = 0.3;
/** Narrowest gap a bag is laid in, as a share of a bag. */
const LEAST_GAP_SHARE = 0.2;

/**
 * Lays bags into what is filled with them: level courses, as many above the ground at the centre line as the
 * section states and further ones below it where the ground falls, each as wide as the outline is at half
 * the course's height. Joints of one course stand half a bag from those of the next
 * (source: NDSU-11, "offset joints half a bag"; DWR-03 asks for a third at least). Null where nothing is
 * filled with bags, or the ground under the base is not known.
 */
export function layBags(cross: CrossSection, bag: Bag): BagCourses | null {
  const { heightM, crestM } = cross;
  const filled = cross.parts.filter(({ material }) => material === "bags");
  const lowestM = lowestUnderBase(cross);
  if (filled.length === 0 || heightM === null || !(lowestM < crestM)) return null;
  const courses = Math.max(1, cross.courses ?? Math.round(heightM / bag.courseM));
  const courseM = heightM / courses;
  const bags: PlacedBag[] = [];
  const count = Math.ceil((crestM - lowestM) / courseM - 1e-9);
  for (let course = 0; course < count; course++) {
    const topM = crestM - (count - 1 - course) * courseM;
    for (const part of filled) bags.push(...layCourse(cross, part, bag, course, topM, courseM));
  }
  return { lowestM, courseM, bags };
}

function layCourse(
  cross: CrossSection,
  part: SectionPart,
  bag: Bag,
  course: number,
  topM: number,
  courseM: number,
): PlacedBag[] {
  return insideAt(part, topM - courseM / 2)
    .flatMap((gap) => bond(gap, bag.placedWidthM, course % 2))
    .map((across) => onGround(cross, across, course, topM, courseM))
    .filter((laid) => laid !== null);
}

/**
 * Divides a stretch into bags whose joints lie on a grid of bags, shifted by half a bag on odd courses. Where
 * the grid leaves no joint inside, the nearest one is moved in: by a sixth of a bag at most, so that a third of
 * a bag still laps.
 */
function bond({ fromM, toM }: Across, bagM: number, odd: number): Across[] {
  const widthM = toM - fromM;
  if (widthM < LEAST_GAP_SHARE * bagM) return [];
  if (widthM < SINGLE_SHARE * bagM) return [{ fromM, toM }];
  const shiftM = (odd * bagM) / 2;
  const leastM = fromM + LEAST_END_SHARE * bagM;
  const mostM = toM - LEAST_END_SHARE * bagM;
  const joints: number[] = [];
  const first = Math.ceil((leastM - shiftM) / bagM);
  for (let k = first; k * bagM + shiftM <= mostM; k++) joints.push(k * bagM + shiftM);
  if (joints.length === 0) {
    const beyondM = first * bagM + shiftM;
    joints.push(beyondM - mostM < leastM - (beyondM - bagM) ? mostM : leastM);
  }
  const ends = [fromM, ...joints, toM];
  return ends.slice(1).map((end, i) => ({ fromM: ends[i]!, toM: end }));
}

function onGround(
  cross: CrossSection,
  across: Across,
  course: number,
  topM: number,
  courseM: number,
): PlacedBag | null {
  const ground = groundAcross(cross);
  const levels = groundBends(cross, across).map(ground);
  const lowest = Math.min(...levels);
  const middle = ground((across.fromM + across.toM) / 2);
  const isBuried = !(topM - middle > LEAST_CLEAR_SHARE * courseM);
  return isBuried ? null : { course, ...across, bottomM: Math.max(topM - courseM, lowest), topM };
}
