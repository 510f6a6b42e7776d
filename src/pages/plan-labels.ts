import { type Box, type Obstacle, placeLabels, type Spot } from "../drawing/place-labels.ts";
import { textWidth } from "../drawing/text-width.ts";

/** Type on the plan, millimetres: 9 pt, and 13 pt for what is read at arm's length. */
const SMALL_MM = 3.2;
const BIG_MM = 4.5;

type Point = readonly [x: number, y: number];

/** One line of words, from the upper left corner of its label, millimetres. */
export interface Words {
  readonly text: string;
  readonly look: "big" | "small" | "strong" | "side" | "flag";
  readonly isOver?: boolean;
}

/** Words that belong to a point on the drawing. */
export interface Label {
  readonly key: string;
  readonly point: Point;
  /** Lines one below the other, or a big figure with lines beside it. */
  readonly words: readonly Words[];
  /** `beside`: the first word is big, on the point's side of the rest. */
  readonly layout: "stack" | "beside";
  /** Where it goes first, right and down; a unit vector, or zero for right at the point. */
  readonly away: Point;
  /**
   * Where it may go: over its point, `close` to it or `near` it on the way `away`, `far` along it, or all `around`,
   * the way `away` best.
   */
  readonly reach: "over" | "close" | "near" | "far" | "around";
  /** Other middles it may have, best first, in the place of all those. */
  readonly middles?: readonly Point[];
  /** True where a line to the point is drawn wherever the words are; they are on the way `away` then. */
  readonly hasLeader?: boolean;
}

/** A label in its place. */
export interface PlacedWords {
  readonly label: Label;
  readonly box: Box;
  /** From the box to the point; null where it is near. */
  readonly leader: readonly [Point, Point] | null;
}

const GAP_MM = 1;
/** Left free beside the words of a label, so that two in a row do not read as one, millimetres. */
const BESIDE_MM = 0.5;
const STEPS_MM = [0, 2.5, 5, 8, 11, 15, 19, 24] as const;
const SLIDES_MM = [0, 3, -3, 6, -6, 10, -10, 15, -15] as const;
const AROUND_MM = [0, 3, 6, 10, 15, 21, 28, 36, 46] as const;
const TURNS = Array.from(
  { length: 16 },
  (_, i): Point => [Math.cos((i * Math.PI) / 8), Math.sin((i * Math.PI) / 8)],
);
/** What it costs to go the other way, as millimetres further off. */
const TURN_COST = 9;
/** Further than this from its point a label has a leader, millimetres. */
const LEADER_MM = 3.4;

/** Finds room for labels, the most important first; one that has none is left out. */
export function placeWords(
  labels: readonly Label[],
  obstacles: readonly Obstacle[],
  bounds: Box,
): PlacedWords[] {
  const wanted = labels.map((label) => ({ key: label.key, text: "", spots: spotsOf(label) }));
  const byKey = new Map(labels.map((label) => [label.key, label]));
  return placeLabels(wanted, obstacles, bounds).map(({ key, box }) => {
    const label = byKey.get(key)!;
    const near = nearest(box, label.point);
    const awayMm = Math.hypot(near[0] - label.point[0], near[1] - label.point[1]);
    const isLed = label.hasLeader || (awayMm > LEADER_MM && label.reach === "near");
    return { label, box, leader: isLed && awayMm > 1 ? [label.point, near] : null };
  });
}

/** A place on the map as the obstacle that a label keeps off. */
export function obstacleAt([x, y]: Point, halfMm: number, cost = Infinity): Obstacle {
  return { left: x - halfMm, right: x + halfMm, top: y - halfMm, bottom: y + halfMm, cost };
}

/** Size of a label, millimetres. */
function sizeOf({ words, layout }: Pick<Label, "words" | "layout">): Point {
  const widths = words.map(widthOf);
  if (layout === "stack") {
    return [Math.max(...widths), sum(words)];
  }
  const [first = 0, ...rest] = widths;
  return [first + 1 + Math.max(0, ...rest), Math.max(BIG_MM, sum(words.slice(1)))];
}

function sum(words: readonly Words[]): number {
  return words.reduce((total, { look }) => total + heightOf(look), 0);
}

export function heightOf(look: Words["look"]): number {
  return look === "big" ? BIG_MM : look === "flag" ? SMALL_MM + 1.2 : SMALL_MM;
}

/** Width of words, millimetres; heavy type is wider. */
export function widthOf({ text, look }: Words): number {
  if (look === "flag") return textWidth(text, SMALL_MM) * 1.08 + 2;
  return textWidth(text, look === "big" ? BIG_MM : SMALL_MM) * WIDER[look];
}

const WIDER = { big: 1.1, small: 1, strong: 1.06, side: 1.2 } as const;

function spotsOf(label: Label): Spot[] {
  const [wordsMm, height] = sizeOf(label);
  const width = wordsMm + 2 * BESIDE_MM;
  const { point, away, reach, middles, hasLeader } = label;
  const spot = ([x, y]: Point, cost: number): Spot => ({
    ...{ left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 },
    cost,
  });
  const at = (direction: Point, gapMm: number, slideMm: number): Point => {
    const support = (Math.abs(direction[0]) * width + Math.abs(direction[1]) * height) / 2;
    const outMm = GAP_MM + gapMm + support;
    return [
      point[0] + direction[0] * outMm - direction[1] * slideMm,
      point[1] + direction[1] * outMm + direction[0] * slideMm,
    ];
  };
  if (middles) return middles.map((middle, index) => spot(middle, index));
  const over = reach === "over" ? [spot(point, 0)] : [];
  if (reach === "around" || reach === "over") {
    const around = AROUND_MM.flatMap((gapMm) =>
      TURNS.flatMap((turn) => {
        const along = turn[0] * away[0] + turn[1] * away[1];
        if (hasLeader && along < 0) return [];
        return spot(at(turn, gapMm, 0), 1 + gapMm + TURN_COST * (1 - along));
      }),
    );
    return [...over, ...around];
  }
  const steps = STEPS_MM.slice(0, { close: 2, near: 6, far: STEPS_MM.length }[reach]);
  const slides = SLIDES_MM.slice(0, reach === "close" ? 5 : SLIDES_MM.length);
  return steps.flatMap((gapMm) =>
    slides.map((slideMm) => spot(at(away, gapMm, slideMm), gapMm + 0.8 * Math.abs(slideMm))),
  );
}

function nearest({ left, right, top, bottom }: Box, [x, y]: Point): Point {
  return [Math.min(right, Math.max(left, x)), Math.min(bottom, Math.max(top, y))];
}
