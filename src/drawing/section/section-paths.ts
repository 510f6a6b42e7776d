import { HEIGHT_CLASSES } from "../../../shared/height-class.ts";
import type { Section } from "../../../shared/plan.ts";
import { classOnReach } from "../../../shared/reaches.ts";
import type { PartMaterial, SectionPart } from "../../../shared/sections/types.ts";
import { sectionById } from "../../../shared/sections.ts";
import type { CrossSection } from "../../../shared/sizing-types.ts";
import { type BagCourses, layBags, type PlacedBag } from "./bag-courses.ts";
import type { SectionFrame } from "./section-frame.ts";
import { groundAcross, groundBends, lowestUnderBase } from "./section-ground.ts";
import { bandOf, faceAt, faceRun, pointsOf } from "./section-outline.ts";

const SAME_M = 1e-3;

/** SVG path data of a section, in the pixels of its frame. */
export interface SectionPaths {
  readonly soil: string;
  readonly groundLine: string;
  readonly water: string;
  readonly waterLine: string;
  /** Bags by height class of their course, each in two shades so that one bag is told from the next. */
  readonly bags: readonly {
    readonly level: number;
    readonly plain: string;
    readonly shaded: string;
  }[];
  /** Loose fill: its whole outline, and its part in each height class. */
  readonly fills: readonly {
    readonly material: PartMaterial;
    readonly whole: string;
    readonly bands: readonly { readonly level: number; readonly d: string }[];
  }[];
  /** What stood there before, and boards and braces, whole outlines of each. */
  readonly earlier: string;
  readonly plywood: string;
  readonly lumber: string;
  readonly sheet: string;
  /** Left and right ends of stretches without ground data, pixels. */
  readonly gaps: readonly (readonly [number, number])[];
}

/**
 * Draws a section into a frame. Ground is drawn only where both neighbouring points have data.
 * @param limitM the plan's limit, whose quarters are the height classes; over is over the cut's own
 */
export function sectionPaths(
  cross: CrossSection,
  section: Section,
  limitM: number,
  frame: SectionFrame,
): SectionPaths {
  const laid = layBags(cross, section.bag);
  const pieces = groundPieces(cross, frame);
  const outM = laid ? (faceRun(cross, cross.waterSide) * laid.courseM) / 2 : 0;
  const outlines = (material: PartMaterial) =>
    cross.parts
      .filter((part) => part.material === material)
      .map((part) => outline(pointsOf(part), frame))
      .join("");
  const boards = (material: PartMaterial) =>
    cross.parts
      .filter((part) => part.material === material)
      .map((part) => outline(footed(pointsOf(part), cross), frame))
      .join("");
  return {
    soil: pieces
      .map(
        (piece) =>
          `M${at(piece[0]![0], frame.heightPx)}L${path(piece)}L${at(piece.at(-1)![0], frame.heightPx)}Z`,
      )
      .join(""),
    groundLine: pieces.map((piece) => `M${path(piece)}`).join(""),
    ...waterPaths(cross, frame, outM),
    bags: laid ? bagPaths(cross, laid, limitM, frame) : [],
    fills: cross.parts
      .filter(({ material }) => material === "sand" || material === "earth")
      .map((part) => fillPaths(cross, part, limitM, frame)),
    earlier: outlines("earlier"),
    plywood: boards("plywood"),
    lumber: boards("lumber"),
    sheet: hasSheet(cross) ? sheetPath(cross, section, laid?.courseM ?? 0, frame) : "",
    gaps: gapsOf(cross, frame),
  };
}

function hasSheet(cross: CrossSection): boolean {
  const declared = sectionById(cross.section);
  return cross.parts.length > 0 && declared.ok && declared.value.sheet;
}

type Point = readonly [number, number];

function groundPieces(cross: CrossSection, frame: SectionFrame): Point[][] {
  const pieces: Point[][] = [];
  let piece: Point[] = [];
  for (let i = 0; i < cross.offsetM.length; i++) {
    const level = cross.groundM[i]!;
    if (Number.isNaN(level)) {
      if (piece.length > 1) pieces.push(piece);
      piece = [];
    } else piece.push([frame.x(cross.offsetM[i]!), frame.y(level)]);
  }
  if (piece.length > 1) pieces.push(piece);
  return pieces;
}

function gapsOf(cross: CrossSection, frame: SectionFrame): (readonly [number, number])[] {
  const gaps: (readonly [number, number])[] = [];
  const { offsetM, groundM } = cross;
  let start = -1;
  for (let i = 0; i <= groundM.length; i++) {
    const isHole = i < groundM.length && Number.isNaN(groundM[i]!);
    if (isHole && start < 0) start = i;
    if (isHole || start < 0) continue;
    const a = frame.x(offsetM[Math.max(0, start - 1)]!);
    const b = frame.x(offsetM[Math.min(groundM.length - 1, i)]!);
    gaps.push([Math.min(a, b), Math.max(a, b)]);
    start = -1;
  }
  return gaps;
}

function waterPaths(
  cross: CrossSection,
  frame: SectionFrame,
  outM: number,
): { readonly water: string; readonly waterLine: string } {
  const side = cross.waterSide;
  const toeM = side === 1 ? cross.toeLeftM : cross.toeRightM;
  const ground = groundAcross(cross);
  const atToe = ground(side * toeM);
  const reachM = faceAt(cross.parts, cross.waterM, side);
  const faceM = reachM === null ? toeM : Math.min(toeM, reachM + outM);
  const y = frame.y(cross.waterM);
  const hasWaterHere = faceM < toeM && atToe < cross.waterM;
  const right = hasWaterHere ? frame.x(side * faceM) : shoreOf(cross, frame, side * toeM);
  if (right === null || right <= 0) return { water: "", waterLine: "" };
  const foot = hasWaterHere
    ? `L${at(frame.x(side * toeM), frame.y(atToe))}L${at(frame.x(side * toeM), frame.heightPx)}`
    : `L${at(right, frame.heightPx)}`;
  return {
    water: `M${at(0, y)}L${at(right, y)}${foot}L${at(0, frame.heightPx)}Z`,
    waterLine: `M${at(0, y)}L${at(right, y)}`,
  };
}

/** Pixels of the place nearest to the line, on the water side, where the ground lies below the water; null when none is in view. */
function shoreOf(cross: CrossSection, frame: SectionFrame, toeM: number): number | null {
  const ground = groundAcross(cross);
  const side = cross.waterSide;
  const far = side === 1 ? Math.max(...cross.offsetM) : Math.min(...cross.offsetM);
  const across = { fromM: Math.min(toeM, far), toM: Math.max(toeM, far) };
  const outward = groundBends(cross, across);
  if (side === -1) outward.reverse();
  const wet = outward.find((offset) => ground(offset) < cross.waterM);
  return wet === undefined ? null : frame.x(wet);
}

function bagPaths(
  cross: CrossSection,
  laid: BagCourses,
  limitM: number,
  frame: SectionFrame,
): SectionPaths["bags"] {
  const levels = Array.from({ length: HEIGHT_CLASSES }, (_, level) => ({
    level,
    plain: "",
    shaded: "",
  }));
  laid.bags.forEach((bag, index) => {
    const heightM = bag.topM - laid.lowestM;
    const paths = levels[Math.max(0, classOnReach(heightM, limitM, cross.limitM))]!;
    const isShaded = (index * 7 + bag.course * 3) % 5 < 2;
    paths[isShaded ? "shaded" : "plain"] += bagPath(bag, frame);
  });
  return levels.filter(({ plain, shaded }) => plain !== "" || shaded !== "");
}

/** Lets what is cut for the ground at the centre reach down to the ground where it is lower. */
function footed(points: readonly Point[], cross: CrossSection): Point[] {
  const ground = groundAcross(cross);
  const bedM = cross.crestM - (cross.heightM ?? 0);
  return points.map(([offset, level]) => {
    const isFoot = Math.abs(level - bedM) < SAME_M;
    return [offset, isFoot && ground(offset) < level ? ground(offset) : level];
  });
}

function fillPaths(
  cross: CrossSection,
  part: SectionPart,
  limitM: number,
  frame: SectionFrame,
): SectionPaths["fills"][number] {
  const over = HEIGHT_CLASSES - 1;
  const stepsM = [1, 2, 3].map((level) => Math.min((level * limitM) / over, cross.limitM));
  const lowestM = lowestUnderBase(cross);
  const edgesM = [-Infinity, ...[...stepsM, cross.limitM].map((m) => lowestM + m), Infinity];
  const bands = edgesM.slice(1).map((topM, level) => {
    const points = topM > edgesM[level]! ? bandOf(part, edgesM[level]!, topM) : [];
    return { level, d: points.length > 2 ? outline(points, frame) : "" };
  });
  return {
    material: part.material,
    whole: outline(pointsOf(part), frame),
    bands: bands.filter(({ d }) => d !== ""),
  };
}

function outline(points: readonly Point[], frame: SectionFrame): string {
  return `M${path(points.map(([offset, level]) => [frame.x(offset), frame.y(level)]))}Z`;
}

/** A filled bag seen from its end: flat where it lies on others, round at its sides. */
function bagPath({ fromM, toM, bottomM, topM }: PlacedBag, frame: SectionFrame): string {
  const a = frame.x(fromM);
  const b = frame.x(toM);
  const left = Math.min(a, b) + 0.25;
  const right = Math.max(a, b) - 0.25;
  const top = frame.y(topM) + 0.2;
  const bottom = frame.y(bottomM) - 0.2;
  const round = Math.min((bottom - top) / 2, (right - left) / 2);
  const flat = Math.min(round * 1.25, (right - left) / 2);
  return (
    `M${at(left + flat, top)}H${px(right - flat)}Q${at(right, top)} ${at(right, top + round)}` +
    `V${px(bottom - round)}Q${at(right, bottom)} ${at(right - flat, bottom)}` +
    `H${px(left + flat)}Q${at(left, bottom)} ${at(left, bottom - round)}` +
    `V${px(top + round)}Q${at(left, top)} ${at(left + flat, top)}Z`
  );
}

function sheetPath(
  cross: CrossSection,
  { sheet }: Section,
  courseM: number,
  frame: SectionFrame,
): string {
  const side = cross.waterSide;
  const { crestM, parts } = cross;
  const toeM = side === 1 ? cross.toeLeftM : cross.toeRightM;
  const landSide = side === 1 ? -1 : 1;
  const ground = groundAcross(cross);
  const top = (which: 1 | -1) => faceAt(parts, crestM - 1e-6, which) ?? cross.crownM / 2;
  const outM = (faceRun(cross, side) * courseM) / 2;
  const landRun = faceRun(cross, landSide);
  const landOutM = (landRun * courseM) / 2;
  const overM = outM / Math.max(1, faceRun(cross, side));
  const bed = groundBends(cross, {
    fromM: Math.min(side * toeM, side * (toeM + sheet.toeExtensionM)),
    toM: Math.max(side * toeM, side * (toeM + sheet.toeExtensionM)),
  });
  if (side === 1) bed.reverse();
  const tailM = sheet.tailM / Math.hypot(1, landRun || 1e-9);
  const tailDropM = Math.min(tailM, crestM - lowestUnderBase(cross));
  const points: [number, number][] = [
    ...bed
      .filter((offset) => !Number.isNaN(ground(offset)))
      .map((offset): [number, number] => [offset, ground(offset)]),
    [side * (top(side) + outM), crestM + overM / 2],
    [-side * (top(landSide) + landOutM), crestM + overM / 2],
    [-side * (top(landSide) + landOutM + landRun * tailDropM), crestM + overM / 2 - tailDropM],
  ];
  return `M${points.map(([offset, level]) => at(frame.x(offset), frame.y(level) - 1.5)).join("L")}`;
}

function path(points: readonly Point[]): string {
  return points.map(([x, y]) => at(x, y)).join("L");
}

function at(x: number, y: number): string {
  return `${px(x)} ${px(y)}`;
}

function px(value: number): number {
  return Math.round(value * 100) / 100;
}
