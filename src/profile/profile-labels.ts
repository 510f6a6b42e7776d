import { heightClass } from "../../shared/height-class.ts";
import type { SizedLine, Walk } from "../../shared/sizing-types.ts";
import { formatElevation, lengthIn, type UnitSystem } from "../../shared/units.ts";
import { nearestSample } from "./picked-samples.ts";
import {
  type LabelWish,
  type Obstacle,
  type PlacedLabel,
  placeLabels,
  type Spot,
} from "./place-labels.ts";
import { limitNote, PROFILE_TYPE_PX, type ProfileFrame } from "./profile-frame.ts";
import type { Gap } from "./profile-paths.ts";
import { textWidth } from "./text-width.ts";

const LINE_PX = 13;
/** Distance of a label's box from the line it names. */
const OFF_PX = 2;
const STEP_PX = 12;
/** Below this width the water's label goes without its note. */
const WIDE_PX = 420;
/** What covering a square pixel of each height class costs: the darker, the worse; over the limit is not for covering. */
const CLASS_COST = [0.002, 0.004, 0.008, 0.015, 0.5];
const LINE_COST = 0.4;

interface LabelRequest {
  readonly line: SizedLine;
  readonly limitM: number;
  readonly frame: ProfileFrame;
  readonly gaps: readonly Gap[];
  /** Added to the water's label, e.g. "at stage 31.4 ft". */
  readonly waterNote: string;
}

/** The labels of a long profile, none touching another. */
export function profileLabels({
  line,
  limitM,
  frame,
  gaps,
  waterNote,
}: LabelRequest): PlacedLabel[] {
  const { walk } = line;
  const { unitSystem, plot } = frame;
  const crest = alongLine(frame, walk, (index) => frame.y(walk.crestM[index]!));
  const water = alongLine(frame, walk, (index) => frame.y(walk.waterM[index]!));
  const limit = alongLine(frame, walk, (index) => frame.y(walk.crestM[index]! - limitM));
  const lowest = alongLine(frame, walk, (index) => frame.y(walk.lowestGroundM[index]!));
  const note = plot.right - plot.left < WIDE_PX ? "" : waterNote;
  const waterText = `Water ${levelRange(walk.waterM, walk, frame, unitSystem)} ${note}`.trim();
  const wishes: LabelWish[] = [
    ...gaps.map((gap, index) => gapWish(gap, index, frame)),
    {
      key: "crest",
      text: `Crest ${levelRange(walk.crestM, walk, frame, unitSystem)}`,
      spots: [],
    },
    { key: "water", text: waterText, spots: [] },
    { key: "limit", text: limitNote(limitM, unitSystem), spots: [] },
    ...reachWishes(line, frame),
  ];
  const spotsOf: Record<string, (text: string) => Spot[]> = {
    crest: (text) => spotsAlong(crest, text, frame, { above: 0, below: 60, from: "left" }),
    water: (text) => spotsAlong(water, text, frame, { above: 0, below: 2, from: "right" }),
    limit: (text) => spotsAlong(limit, text, frame, { above: 0, below: 2, from: "left" }),
  };
  const full = wishes.map((wish) => ({
    ...wish,
    spots: spotsOf[wish.key]?.(wish.text) ?? wish.spots,
  }));
  const obstacles = [
    ...bandObstacles(walk, limitM, frame),
    ...[crest, water, limit, lowest].flatMap((heights) => lineObstacles(heights, frame)),
  ];
  return placeLabels(full, obstacles, { ...plot, top: plot.top - 1 });
}

/** Height in pixels of a level at every step across the plot. */
function alongLine(frame: ProfileFrame, walk: Walk, yOf: (index: number) => number): number[] {
  return columns(frame, walk).map(yOf);
}

function columns({ plot, chainageAt }: ProfileFrame, walk: Walk): number[] {
  const count = Math.ceil((plot.right - plot.left) / STEP_PX) + 1;
  return Array.from({ length: count }, (_, i) =>
    nearestSample(walk.chainageM, chainageAt(plot.left + i * STEP_PX)),
  );
}

function spotsAlong(
  heights: readonly number[],
  text: string,
  { plot }: ProfileFrame,
  wish: { above: number; below: number; from: "left" | "right" },
): Spot[] {
  const width = textWidth(text, PROFILE_TYPE_PX);
  const spots: Spot[] = [];
  for (let left = plot.left + 4; left + width <= plot.right - 3; left += STEP_PX) {
    const fromEnd = wish.from === "left" ? left - plot.left : plot.right - left - width;
    const first = Math.floor((left - plot.left) / STEP_PX);
    const under = heights.slice(first, first + Math.ceil(width / STEP_PX) + 2);
    const highest = Math.min(...under) - OFF_PX;
    const lowest = Math.max(...under) + OFF_PX;
    const cost = (fromEnd / Math.max(1, plot.right - plot.left)) * 12;
    const box = { left, right: left + width };
    spots.push({ ...box, top: highest - LINE_PX, bottom: highest, cost: cost + wish.above });
    spots.push({ ...box, top: lowest, bottom: lowest + LINE_PX, cost: cost + wish.below });
  }
  return spots;
}

function gapWish({ fromPx, toPx }: Gap, index: number, { plot }: ProfileFrame): LabelWish {
  const text = "no ground data";
  const width = textWidth(text, PROFILE_TYPE_PX);
  const middle = (fromPx + toPx) / 2;
  const spanPx = toPx - fromPx;
  const spots: Spot[] = [6, 18, 30, 42].flatMap((upPx): Spot[] => {
    const bottom = plot.bottom - upPx;
    const flat = { top: bottom - LINE_PX, bottom };
    const inside = { left: middle - width / 2, right: middle + width / 2, ...flat };
    const upright = {
      left: middle - LINE_PX / 2,
      right: middle + LINE_PX / 2,
      top: bottom - width,
      bottom,
      turned: true,
    };
    return [
      { ...inside, cost: spanPx >= width + 6 ? upPx / 20 : 1e6 },
      { ...upright, cost: spanPx >= LINE_PX + 2 ? 1 + upPx / 20 : 1e6 },
      { left: toPx + 4, right: toPx + 4 + width, ...flat, cost: 40 + upPx / 20 },
      { left: fromPx - 4 - width, right: fromPx - 4, ...flat, cost: 41 + upPx / 20 },
    ];
  });
  return { key: `gap-${index}`, text, spots };
}

function reachWishes({ reaches }: SizedLine, { plot, x }: ProfileFrame): LabelWish[] {
  if (reaches.length < 2) return [];
  return reaches.map((reach, index) => {
    const text = `Reach ${index + 1}`;
    const width = textWidth(text, PROFILE_TYPE_PX);
    const from = Math.max(plot.left, x(reach.fromM));
    const to = Math.min(plot.right, x(reach.toM));
    const left = (from + to - width) / 2;
    const box = { left, right: left + width };
    const fits = to - from >= width + 8;
    const spots = [4, 18].map((upPx) => ({
      ...box,
      top: plot.bottom - upPx - LINE_PX,
      bottom: plot.bottom - upPx,
      cost: upPx,
    }));
    return { key: `reach-${index}`, text, spots: fits ? spots : [] };
  });
}

function bandObstacles(walk: Walk, limitM: number, frame: ProfileFrame): Obstacle[] {
  return columns(frame, walk).map((index, i) => {
    const left = frame.plot.left + (i - 0.5) * STEP_PX;
    const level = heightClass(walk.greatestHeightM[index]!, limitM);
    return {
      left,
      right: left + STEP_PX,
      top: frame.y(walk.crestM[index]!),
      bottom: frame.y(walk.groundM[index]!),
      cost: CLASS_COST[level] ?? 0,
    };
  });
}

function lineObstacles(heights: readonly number[], { plot }: ProfileFrame): Obstacle[] {
  return heights.map((y, i) => {
    const left = plot.left + (i - 0.5) * STEP_PX;
    return { left, right: left + STEP_PX, top: y - 1, bottom: y + 1, cost: LINE_COST };
  });
}

function levelRange(
  levels: Float64Array,
  walk: Walk,
  { stretch }: ProfileFrame,
  system: UnitSystem,
): string {
  const first = nearestSample(walk.chainageM, stretch.fromM);
  const last = nearestSample(walk.chainageM, stretch.toM);
  const seen = levels.subarray(first, last + 1);
  const low = seen.reduce((least, level) => Math.min(least, level), Infinity);
  const high = seen.reduce((most, level) => Math.max(most, level), -Infinity);
  const lowText = lengthIn(low, system).toFixed(2);
  const highText = formatElevation(high, system);
  return highText.startsWith(lowText) ? highText : `${lowText} to ${highText}`;
}
