import { classOnReach, hasOtherSections, reachAt } from "../../../shared/reaches.ts";
import type { SizedLine, Walk } from "../../../shared/sizing-types.ts";
import { formatElevation, formatLength, lengthIn, type UnitSystem } from "../../../shared/units.ts";
import {
  type Obstacle,
  type PlacedLabel,
  placeLabels,
  type Spot,
  type WantedLabel,
} from "../place-labels.ts";
import { textWidth } from "../text-width.ts";
import type { ProfileMoment } from "./moment.ts";
import { nearestSample } from "./picked-samples.ts";
import type { PlacedMark } from "./placed-marks.ts";
import { limitNote, PROFILE_TYPE_PX, type ProfileFrame } from "./profile-frame.ts";
import { drawnGroundM, type Gap } from "./profile-paths.ts";

const LINE_PX = 14;
/** Distance of a label's box from the line it names. */
const OFF_PX = 2;
const STEP_PX = 12;
/** Between a mark and its words. */
const MARK_GAP_PX = 3;
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
  readonly marks?: readonly PlacedMark[];
  /** The water at the moment looked at. */
  readonly moment?: ProfileMoment | null;
}

/** The labels of a long profile, none touching another. */
export function profileLabels({
  line,
  limitM,
  frame,
  gaps,
  waterNote,
  marks = [],
  moment = null,
}: LabelRequest): PlacedLabel[] {
  const { walk } = line;
  const { unitSystem, plot } = frame;
  const crest = alongLine(frame, walk, (index) => frame.y(walk.crestM[index]!));
  const water = alongLine(frame, walk, (index) => frame.y(walk.waterM[index]!));
  const limit = alongLine(frame, walk, (index) =>
    frame.y(walk.crestM[index]! - reachAt(line, walk.chainageM[index]!).limitM),
  );
  const then = moment
    ? alongLine(frame, walk, (index) => frame.y(walk.waterM[index]! + moment.riseM))
    : [];
  const ground = alongLine(frame, walk, (index) => frame.y(drawnGroundM(walk, index)));
  const note = plot.right - plot.left < WIDE_PX ? "" : waterNote;
  const waterText = `Water ${levelRange(walk.waterM, walk, frame, unitSystem)} ${note}`.trim();
  const isScreen = frame.layout === "screen";
  const namesOfLines: WantedLabel[] = [
    {
      key: "crest",
      text: `Top of levee ${levelRange(walk.crestM, walk, frame, unitSystem)}`,
      spots: [],
    },
    { key: "water", text: waterText, spots: [] },
  ];
  const labels: WantedLabel[] = [
    ...gaps.map((gap, index) => gapLabel(gap, index, frame)),
    ...marks.map((mark) => markLabel(mark)),
    ...(isScreen ? [] : namesOfLines),
    ...(moment ? [{ key: "moment", text: moment.words, spots: [] }] : []),
    ...(isScreen && hasOneLimit(line) ? [] : limitLabels(line, limit, frame)),
    ...reachLabels(line, frame),
  ];
  const spotsOf: Record<string, (text: string) => Spot[]> = {
    crest: (text) => spotsAlong(crest, text, frame, { above: 0, below: 60, from: "left" }),
    water: (text) => spotsAlong(water, text, frame, { above: 0, below: 2, from: "right" }),
    moment: (text) => momentSpots(then, text, frame),
  };
  const full = labels.map((label) => ({
    ...label,
    spots: spotsOf[label.key]?.(label.text) ?? label.spots,
  }));
  const obstacles = [
    ...bandObstacles(line, limitM, frame),
    ...[crest, water, limit, ground, then].flatMap((heights) => lineObstacles(heights, frame)),
    ...marks.map(({ box }) => ({ ...box, cost: Number.POSITIVE_INFINITY })),
  ];
  return placeLabels(full, obstacles, { ...plot, top: plot.top - 1 });
}

/** True where the same limit holds all along a line. */
export function hasOneLimit({ reaches }: Pick<SizedLine, "reaches">): boolean {
  return reaches.every(({ limitM }) => Math.abs(limitM - reaches[0]!.limitM) < 1e-6);
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
  label: {
    above: number;
    below: number;
    from: "left" | "right";
    between?: readonly [number, number];
  },
): Spot[] {
  const width = textWidth(text, PROFILE_TYPE_PX);
  const [fromPx, toPx] = label.between ?? [plot.left, plot.right];
  const spots: Spot[] = [];
  for (let left = fromPx + 4; left + width <= toPx - 3; left += STEP_PX) {
    const fromEnd = label.from === "left" ? left - plot.left : plot.right - left - width;
    const first = Math.ceil((Math.max(fromPx, left - STEP_PX) - plot.left) / STEP_PX);
    const last = Math.floor((Math.min(toPx, left + width + STEP_PX) - plot.left) / STEP_PX);
    const under = heights.slice(first, last + 1);
    const highest = Math.min(...under) - OFF_PX;
    const lowest = Math.max(...under) + OFF_PX;
    const cost = (fromEnd / Math.max(1, plot.right - plot.left)) * 12;
    const box = { left, right: left + width };
    spots.push({ ...box, top: highest - LINE_PX, bottom: highest, cost: cost + label.above });
    spots.push({ ...box, top: lowest, bottom: lowest + LINE_PX, cost: cost + label.below });
  }
  return spots;
}

function gapLabel({ fromPx, toPx }: Gap, index: number, { plot }: ProfileFrame): WantedLabel {
  const text = "no elevation data";
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

/** A mark's words beside it, the fullest first; the best spot is to its right. */
function markLabel({ key, texts, box }: PlacedMark): WantedLabel {
  const middle = (box.top + box.bottom) / 2;
  const spots = texts.flatMap((text, shorter) => {
    const width = textWidth(text, PROFILE_TYPE_PX) + 2;
    return [0, -LINE_PX, LINE_PX, -2 * LINE_PX, 2 * LINE_PX].flatMap((downPx, away): Spot[] => {
      const top = middle + downPx - LINE_PX / 2;
      const beside = { text, top, bottom: top + LINE_PX };
      const cost = 4 * shorter + 1.5 * away;
      const right = box.right + MARK_GAP_PX;
      const left = box.left - MARK_GAP_PX;
      return [
        { ...beside, left: right, right: right + width, cost },
        { ...beside, left: left - width, right: left, cost: cost + 0.5 },
      ];
    });
  });
  return { key, text: texts[0] ?? "", spots };
}

/** One label for each stretch of reaches with the same limit. */
function limitLabels(
  line: SizedLine,
  limit: readonly number[],
  frame: ProfileFrame,
): WantedLabel[] {
  const runs: { fromM: number; toM: number; limitM: number }[] = [];
  for (const { fromM, toM, limitM } of line.reaches) {
    const last = runs.at(-1);
    if (last && Math.abs(last.limitM - limitM) < 1e-6) last.toM = toM;
    else runs.push({ fromM, toM, limitM });
  }
  const { plot, unitSystem, x } = frame;
  return runs.map(({ fromM, toM, limitM }, index) => {
    const text =
      frame.layout === "screen"
        ? `Height limit ${formatLength(limitM, unitSystem)}`
        : limitNote(limitM, unitSystem);
    const between = [Math.max(plot.left, x(fromM)), Math.min(plot.right, x(toM))] as const;
    const spots = spotsAlong(limit, text, frame, { above: 0, below: 2, from: "left", between });
    const key = hasOtherSections(line) ? `limit-plate-${index}` : "limit";
    return { key, text, spots };
  });
}

/** Along the water of the moment; at the foot of the drawing where that water is lower than all of it. */
function momentSpots(then: readonly number[], text: string, frame: ProfileFrame): Spot[] {
  const { plot } = frame;
  if (then.some((y) => y < plot.bottom)) {
    return spotsAlong(then, text, frame, { above: 0, below: 1, from: "right" });
  }
  const foot = then.map(() => plot.bottom);
  return spotsAlong(foot, text, frame, { above: 0, below: 1e3, from: "right" });
}

function reachLabels(line: SizedLine, { plot, x }: ProfileFrame): WantedLabel[] {
  const { reaches } = line;
  if (reaches.length < 2 || hasOtherSections(line)) return [];
  return reaches.map((reach, index) => {
    const text = `Reach ${index + 1}`;
    const width = textWidth(text, PROFILE_TYPE_PX);
    const from = Math.max(plot.left, x(reach.fromM));
    const to = Math.min(plot.right, x(reach.toM));
    const left = (from + to - width) / 2;
    const box = { left, right: left + width };
    const fits = to - from >= width + 8;
    const spots = [4, 18, 32, 46].map((upPx) => ({
      ...box,
      top: plot.bottom - upPx - LINE_PX,
      bottom: plot.bottom - upPx,
      cost: upPx,
    }));
    return { key: `reach-${index}`, text, spots: fits ? spots : [] };
  });
}

function bandObstacles(line: SizedLine, stepsToM: number, frame: ProfileFrame): Obstacle[] {
  const { walk } = line;
  return columns(frame, walk).map((index, i) => {
    const left = frame.plot.left + (i - 0.5) * STEP_PX;
    const { limitM } = reachAt(line, walk.chainageM[index]!);
    const level = classOnReach(walk.greatestHeightM[index]!, stepsToM, limitM);
    return {
      left,
      right: left + STEP_PX,
      top: frame.y(walk.crestM[index]!),
      bottom: frame.y(drawnGroundM(walk, index)),
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
  const [from, to] = [low, high].map((m) => Math.round(100 * lengthIn(m, system)) / 100);
  const highest = formatElevation(high, system);
  return from === to ? highest : `${from!.toFixed(2)} to ${highest}`;
}
