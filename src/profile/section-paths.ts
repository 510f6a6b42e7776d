import { HEIGHT_CLASSES, heightClass } from "../../shared/height-class.ts";
import type { Section } from "../../shared/plan.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { type BagCourses, layBags, type PlacedBag } from "./bag-courses.ts";
import type { SectionFrame } from "./section-frame.ts";
import { groundAcross, groundBends } from "./section-ground.ts";

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
  readonly sheet: string;
  /** Left and right ends of stretches without ground data, pixels. */
  readonly gaps: readonly (readonly [number, number])[];
}

/** Draws a section into a frame. Ground is drawn only where both neighbouring points have data. */
export function sectionPaths(
  cross: CrossSection,
  section: Section,
  limitM: number,
  frame: SectionFrame,
): SectionPaths {
  const laid = layBags(cross, section.bag);
  const pieces = groundPieces(cross, frame);
  return {
    soil: pieces
      .map(
        (piece) =>
          `M${at(piece[0]![0], frame.heightPx)}L${path(piece)}L${at(piece.at(-1)![0], frame.heightPx)}Z`,
      )
      .join(""),
    groundLine: pieces.map((piece) => `M${path(piece)}`).join(""),
    ...waterPaths(cross, frame, laid ? (cross.sideSlope * laid.courseM) / 2 : 0),
    bags: laid ? bagPaths(laid, limitM, frame) : [],
    sheet: laid ? sheetPath(cross, section, laid, frame) : "",
    gaps: gapsOf(cross, frame),
  };
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
  const reachM = cross.crownM / 2 + cross.sideSlope * (cross.crestM - cross.waterM) + outM;
  const faceM = Math.min(toeM, reachM);
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

function bagPaths(laid: BagCourses, limitM: number, frame: SectionFrame): SectionPaths["bags"] {
  const levels = Array.from({ length: HEIGHT_CLASSES }, (_, level) => ({
    level,
    plain: "",
    shaded: "",
  }));
  laid.bags.forEach((bag, index) => {
    const heightM = bag.topM - laid.lowestM;
    const paths = levels[Math.max(0, heightClass(heightM, limitM))]!;
    const isShaded = (index * 7 + bag.course * 3) % 5 < 2;
    paths[isShaded ? "shaded" : "plain"] += bagPath(bag, frame);
  });
  return levels.filter(({ plain, shaded }) => plain !== "" || shaded !== "");
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
  laid: BagCourses,
  frame: SectionFrame,
): string {
  const side = cross.waterSide;
  const { crownM, sideSlope, crestM } = cross;
  const toeM = side === 1 ? cross.toeLeftM : cross.toeRightM;
  const ground = groundAcross(cross);
  const outM = (sideSlope * laid.courseM) / 2;
  const overM = outM / Math.max(1, sideSlope);
  const bed = groundBends(cross, {
    fromM: Math.min(side * toeM, side * (toeM + sheet.toeExtensionM)),
    toM: Math.max(side * toeM, side * (toeM + sheet.toeExtensionM)),
  });
  if (side === 1) bed.reverse();
  const tailRun = sheet.tailM / Math.hypot(1, sideSlope || 1e-9);
  const tailDrop = Math.min(tailRun, crestM - laid.lowestM);
  const points: [number, number][] = [
    ...bed
      .filter((offset) => !Number.isNaN(ground(offset)))
      .map((offset): [number, number] => [offset, ground(offset)]),
    [side * (crownM / 2 + outM), crestM + overM / 2],
    [-side * (crownM / 2 + outM), crestM + overM / 2],
    [-side * (crownM / 2 + outM + sideSlope * tailDrop), crestM + overM / 2 - tailDrop],
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
