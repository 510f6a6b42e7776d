import { type Box, type IsBarred, placeLabels, type Spot } from "../drawing/place-labels.ts";
import { textWidth } from "../drawing/text-width.ts";
import {
  isClear,
  type Leader,
  meetsBox,
  meetsLine,
  meetsOthers,
  type PlanRoom,
} from "./plan-room.ts";

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
  /** Where it may go: over its point, `near` it on the way `away` or further with a leader, or all `around` it. */
  readonly reach: "over" | "near" | "around";
  /** No further from its point than this, millimetres; left out = as far as there is room. */
  readonly mostMm?: number;
  /** Other middles it may have, best first, in the place of all those. */
  readonly middles?: readonly Point[];
  /** True where a line to the point is drawn wherever the words are; they are on the way `away` then. */
  readonly hasLeader?: boolean;
  /** True where the words must not run over a building, nor their leader over anything. */
  readonly isClear?: boolean;
  /** Where it goes when there is no room on the way `away`: from this point, the other way. */
  readonly orFrom?: Point;
}

/** A label in its place. */
export interface PlacedWords {
  readonly label: Label;
  readonly box: Box;
  /** From the point to the box; null where it is near. */
  readonly leader: Leader | null;
  /** True where it found room on the other side alone. */
  readonly isTurned: boolean;
}

const GAP_MM = 1;
/** Left free beside the words of a label, so that two in a row do not read as one, millimetres. */
const BESIDE_MM = 0.5;
const STEPS_MM = [0, 1.2, 2.5, 4, 6, 8, 11, 15, 19, 24, 30] as const;
const SLIDES_MM = [0, 1.5, 3, 4.5, 6, 8, 10, 12.5, 15, 18, 22].flatMap((mm) =>
  mm ? [mm, -mm] : [mm],
);
const AROUND_MM = [0, 3, 6, 10, 15, 21, 28, 36, 46] as const;
const turnsOf = (count: number) =>
  Array.from({ length: count }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / count;
    return [Math.cos(angle), Math.sin(angle)];
  });
const TURNS = turnsOf(16);
/** Words that are led to their point are looked a place for more closely: they must be found one. */
const LED_TURNS = turnsOf(48);
const LED_MM = [0, 1.5, 3, 4.5, 6, 8, 10, 12.5, 15, 18, 21, 24, 28, 32, 36, 41, 46] as const;
/** What it costs to go the other way, as millimetres further off. */
const TURN_COST = 9;
/** How often labels without room may go before others. */
const MOST_TRIES = 6;
/** A label left out is as bad as leaders of this length, one on the other side as these, millimetres. */
const MISSING_MM = 400;
const TURNED_MM = 200;
/** A leader through other words is as bad as one of this length, millimetres: still better than no name. */
const CROSSED_MM = 100;
/** What it costs to be on the other side of the line, as millimetres further off. */
const OTHER_SIDE_COST = 60;
/** Further than this from its point a label has a leader, millimetres. */
const LEADER_MM = 3.4;

/**
 * Finds room for labels, the most important first; one that has none is left out. A clear label that found none on
 * its own side, and one whose leader would run through other words, goes before the others in the next of a few
 * tries, of which the best counts; where such a leader finds no other way it runs through them at last.
 */
export function placeWords(
  labels: readonly Label[],
  room: PlanRoom,
  bounds: Box,
): readonly PlacedWords[] {
  let ordered = labels;
  let best: Tried = { placed: [], ordered: labels, crossing: new Set() };
  let leastMm = Infinity;
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const free = placeOnce(ordered, room, bounds, new Set());
    const kept = new Set(free.map(({ label }) => label.key));
    const crossing = new Set(
      ordered.filter(({ key, hasLeader }) => hasLeader && !kept.has(key)).map(({ key }) => key),
    );
    const placed = crossing.size > 0 ? placeOnce(ordered, room, bounds, crossing) : free;
    const well = new Set(placed.filter(({ isTurned }) => !isTurned).map(({ label }) => label.key));
    const turned = ordered.filter(({ key, isClear }) => isClear && !well.has(key));
    const failed = ordered.filter((label) => turned.includes(label) || crossing.has(label.key));
    const missing = labels.length - placed.length;
    const ledMm = placed.reduce((sum, { leader }) => sum + (leader ? lengthOf(leader) : 0), 0);
    const badMm =
      ledMm + missing * MISSING_MM + turned.length * TURNED_MM + crossing.size * CROSSED_MM;
    if (badMm < leastMm) [best, leastMm] = [{ placed, ordered, crossing }, badMm];
    const next = [...ordered].sort((a, b) => turnOf(a, failed) - turnOf(b, failed));
    if (next.every((label, i) => label === ordered[i])) break;
    ordered = next;
  }
  return withNames(best, room, bounds);
}

/** What came of labels in an order, and which of their leaders might run through others. */
interface Tried {
  readonly placed: readonly PlacedWords[];
  readonly ordered: readonly Label[];
  readonly crossing: ReadonlySet<string>;
}

/** What is led to its words and has no room for all of them is named at the least, once all others are placed. */
function withNames(
  { placed, ordered, crossing }: Tried,
  room: PlanRoom,
  bounds: Box,
): readonly PlacedWords[] {
  const kept = new Set(placed.map(({ label }) => label.key));
  const lost = ordered.filter(({ key, hasLeader }) => hasLeader && !kept.has(key));
  if (lost.length === 0) return placed;
  const named = lost.map((each): Label => {
    const [name] = each.words;
    return { ...each, isClear: false, words: [name!] };
  });
  const before = ordered.filter(({ key }) => kept.has(key));
  const may = new Set([...crossing, ...lost.map(({ key }) => key)]);
  return placeOnce([...before, ...named], room, bounds, may);
}

/** Buildings are named first, where they stand; then the line's own figures, and the rest: what failed before others. */
function turnOf(label: Label, failed: readonly Label[]): number {
  if (label.reach === "over" && !label.middles) return 0;
  const isOfLine = label.reach === "near";
  return (isOfLine ? 1 : 3) + (failed.includes(label) ? 0 : 1);
}

/** @param crossing labels whose leaders may run through other words and leaders */
function placeOnce(
  labels: readonly Label[],
  room: PlanRoom,
  bounds: Box,
  crossing: ReadonlySet<string>,
): PlacedWords[] {
  const wanted = labels.map((label) => ({ key: label.key, text: "", spots: spotsOf(label) }));
  const byKey = new Map(labels.map((label) => [label.key, label]));
  const leaders = new Map<string, Leader | null>();
  const isBarred: IsBarred = (key, spot, placed) => {
    const label = byKey.get(key)!;
    const others = placed.map(({ key: other, box }) => {
      if (!leaders.has(other)) leaders.set(other, leaderOf(byKey.get(other)!, box));
      return { box, leader: leaders.get(other)! };
    });
    const [way] = waysTo(label, spot);
    return (
      others.some((other) => other.leader !== null && meetsBox(other.leader, spot)) ||
      (label.reach === "around" && meetsLine(way!, room.barred)) ||
      (label.hasLeader === true && !crossing.has(key) && meetsOthers(way!, others)) ||
      (label.isClear === true && !isClear(spot, leaderOf(label, spot), room.barred, others))
    );
  };
  return placeLabels(wanted, room.obstacles, bounds, isBarred).map(({ key, box }) => {
    const label = byKey.get(key)!;
    const isTurned = label.orFrom !== undefined && waysTo(label, box)[0]![0] !== label.point;
    return { label, box, leader: leaderOf(label, box), isTurned };
  });
}

/** From the point that a label is for to its words; null where they are near. */
function leaderOf(label: Label, box: Box): Leader | null {
  if (label.reach === "over" || label.middles) return null;
  const [leader] = waysTo(label, box);
  const mostMm = label.hasLeader ? 1 : label.reach === "around" ? Infinity : LEADER_MM;
  return lengthOf(leader!) > mostMm ? leader! : null;
}

/** From the points that a label may belong to straight to its box, the shortest first. */
function waysTo({ point, orFrom }: Label, box: Box): Leader[] {
  return (orFrom ? [point, orFrom] : [point])
    .map((from): Leader => [from, nearest(box, from)])
    .sort((a, b) => lengthOf(a) - lengthOf(b));
}

function lengthOf([[ax, ay], [bx, by]]: Leader): number {
  return Math.hypot(bx - ax, by - ay);
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
  return HEIGHTS_MM[look];
}

/** A side's name keeps off other words, so that it is not read as one of their lines. */
const HEIGHTS_MM = {
  ...{ big: BIG_MM, small: SMALL_MM, strong: SMALL_MM },
  ...{ side: SMALL_MM + 1.8, flag: SMALL_MM + 1.2 },
} as const;

/** Width of words, millimetres; heavy type is wider. */
export function widthOf({ text, look }: Words): number {
  if (look === "flag") return textWidth(text, SMALL_MM) * 1.08 + 2;
  return textWidth(text, look === "big" ? BIG_MM : SMALL_MM) * WIDER[look];
}

const WIDER = { big: 1.1, small: 1, strong: 1.06, side: 1.2 } as const;

function spotsOf(label: Label): Spot[] {
  const [wordsMm, height] = sizeOf(label);
  const width = wordsMm + 2 * BESIDE_MM;
  const { point, away, reach, middles, hasLeader, mostMm = Infinity } = label;
  const spot = ([x, y]: Point, cost: number): Spot => ({
    ...{ left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 },
    cost,
  });
  const at = (direction: Point, gapMm: number, slideMm: number, from = point): Point => {
    const support = (Math.abs(direction[0]) * width + Math.abs(direction[1]) * height) / 2;
    const outMm = GAP_MM + gapMm + support;
    return [
      from[0] + direction[0] * outMm - direction[1] * slideMm,
      from[1] + direction[1] * outMm + direction[0] * slideMm,
    ];
  };
  if (middles) return middles.map((middle, index) => spot(middle, index));
  const over = reach === "over" ? [spot(point, 0)] : [];
  if (reach === "around" || reach === "over") {
    const [gaps, turns] = hasLeader ? [LED_MM, LED_TURNS] : [AROUND_MM, TURNS];
    const near = gaps.filter((mm) => mm <= mostMm);
    const around = near.flatMap((gapMm) =>
      turns.flatMap((turn) => {
        const along = turn[0] * away[0] + turn[1] * away[1];
        if (hasLeader && along < 0) return [];
        return spot(at(turn, gapMm, 0), 1 + gapMm + TURN_COST * (1 - along));
      }),
    );
    return [...over, ...around];
  }
  const ways = [{ from: point, way: away, more: 0 }];
  if (label.orFrom) {
    const back: Point = [-away[0], -away[1]];
    ways.push({ from: label.orFrom, way: back, more: OTHER_SIDE_COST });
  }
  return ways.flatMap(({ from, way, more }) =>
    STEPS_MM.flatMap((gapMm) =>
      SLIDES_MM.map((slideMm) =>
        spot(at(way, gapMm, slideMm, from), more + gapMm + 0.8 * Math.abs(slideMm)),
      ),
    ),
  );
}

function nearest({ left, right, top, bottom }: Box, [x, y]: Point): Point {
  return [Math.min(right, Math.max(left, x)), Math.min(bottom, Math.max(top, y))];
}
