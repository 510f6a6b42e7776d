import { HEIGHT_CLASSES } from "../../../shared/height-class.ts";
import { classOnReach, reachAt } from "../../../shared/reaches.ts";
import type { SizedLine, Walk } from "../../../shared/sizing-types.ts";
import { pickSamples } from "./picked-samples.ts";
import type { ProfileFrame } from "./profile-frame.ts";

/** Narrowest a stretch over the limit is drawn, pixels: it may be short, but it must be seen. */
const LEAST_OVER_PX = 2;

/** A gap in the data along the line, pixels. */
export interface Gap {
  readonly fromPx: number;
  readonly toPx: number;
}

/**
 * SVG path data of a long profile, in the pixels of its frame. Its ground is the lowest under the base, so that the
 * levee drawn over it has the heights that are named; where some of that is not known, that at the center line.
 */
export interface ProfilePaths {
  readonly groundLine: string;
  readonly groundFill: string;
  /** Levee between ground and crest, one path per height class. */
  readonly bands: readonly string[];
  /** Levee whose base reaches ground without data: its height is not known. */
  readonly unknownBand: string;
  readonly crestLine: string;
  readonly waterLine: string;
  readonly limitLine: string;
  /** Water at a moment; empty without one. */
  readonly momentLine: string;
  readonly gaps: readonly Gap[];
}

/** Class of a sample's levee, or what is missing to tell it. */
type Kind = number | "hole" | "unknown";

/** A sample in pixels; its point on the ground is kept as text, used several times. */
interface Sample {
  readonly x: number;
  readonly ground: number;
  readonly crest: number;
  readonly kind: Kind;
  readonly groundPoint: string;
}

/** What of a frame a line is drawn into. */
type PathFrame = Pick<ProfileFrame, "plot" | "stretch" | "x" | "y">;

/** What of a line is drawn. */
type Drawn = Pick<SizedLine, "walk" | "reaches">;

/**
 * Draws a line's walk into a frame. Ground is never drawn between a sample with data and one without.
 * @param stepsToM height that the classes divide, metres; what is over is each reach's own limit's to say
 * @param momentRiseM water at a moment, above the water the line is sized for, metres
 */
export function profilePaths(
  line: Drawn,
  stepsToM: number,
  frame: PathFrame,
  momentRiseM?: number,
): ProfilePaths {
  const { plot, stretch } = frame;
  const { walk } = line;
  const picked = pickSamples(walk, stretch.fromM, stretch.toM, Math.ceil(plot.right - plot.left));
  const samples = picked.map((index) => sampleOf(line, index, stepsToM, frame));
  const ground = runs(samples, ({ kind }) => kind !== "hole").map(([start, end]) => ({
    start: samples[start]!.x,
    end: samples[end]!.x,
    points: samples.slice(start, end + 1).map(({ groundPoint }) => groundPoint),
  }));
  const level = (yOf: (index: number) => number) =>
    pathOf(straightened(picked.map((index, i) => [samples[i]!.x, yOf(index)])));
  return {
    groundLine: ground.map(({ points }) => `M${points.join("L")}`).join(""),
    groundFill: ground
      .map(
        ({ start, end, points }) =>
          `M${point(start, plot.bottom)}L${points.join("L")}L${point(end, plot.bottom)}Z`,
      )
      .join(""),
    ...bandPaths(samples),
    crestLine: level((index) => frame.y(walk.crestM[index]!)),
    waterLine: level((index) => frame.y(walk.waterM[index]!)),
    limitLine: level((index) =>
      frame.y(walk.crestM[index]! - reachAt(line, walk.chainageM[index]!).limitM),
    ),
    momentLine:
      momentRiseM === undefined ? "" : level((index) => frame.y(walk.waterM[index]! + momentRiseM)),
    gaps: gapsOf(samples, frame),
  };
}

function sampleOf(line: Drawn, index: number, stepsToM: number, frame: PathFrame): Sample {
  const { walk } = line;
  const { limitM } = reachAt(line, walk.chainageM[index]!);
  const greatest = walk.greatestHeightM[index]!;
  const x = frame.x(walk.chainageM[index]!);
  const ground = frame.y(drawnGroundM(walk, index));
  const known = Number.isNaN(greatest) ? "unknown" : classOnReach(greatest, stepsToM, limitM);
  return {
    x,
    ground,
    crest: frame.y(walk.crestM[index]!),
    kind: Number.isNaN(ground) ? "hole" : known,
    groundPoint: point(x, ground),
  };
}

/** The ground that is drawn at a sample: the lowest under the base, else that at the center line; NaN for none. */
export function drawnGroundM({ groundM, lowestGroundM }: Walk, index: number): number {
  const lowest = lowestGroundM[index]!;
  return Number.isNaN(groundM[index]!) || Number.isNaN(lowest) ? groundM[index]! : lowest;
}

function bandPaths(samples: readonly Sample[]): {
  readonly bands: readonly string[];
  readonly unknownBand: string;
} {
  const bands = Array.from({ length: HEIGHT_CLASSES }, () => "");
  let unknownBand = "";
  for (const [start, end] of stretches(samples, ({ kind }) => kind)) {
    const { kind } = samples[start]!;
    if (kind === "unknown") unknownBand += band(samples, start, end, 0);
    if (typeof kind === "number" && kind >= 0) {
      bands[kind] += band(samples, start, end, kind === HEIGHT_CLASSES - 1 ? LEAST_OVER_PX : 0);
    }
  }
  return { bands, unknownBand };
}

type Run = readonly [number, number];

/** First and last index of each stretch of samples that share a key. */
function stretches(samples: readonly Sample[], keyOf: (sample: Sample) => unknown): Run[] {
  const found: Run[] = [];
  let start = 0;
  for (let i = 1; i <= samples.length; i++) {
    if (i < samples.length && keyOf(samples[i]!) === keyOf(samples[start]!)) continue;
    found.push([start, i - 1]);
    start = i;
  }
  return samples.length === 0 ? [] : found;
}

/** The stretches that hold to a condition. */
function runs(samples: readonly Sample[], holds: (sample: Sample) => boolean): Run[] {
  return stretches(samples, holds).filter(([start]) => holds(samples[start]!));
}

function band(samples: readonly Sample[], start: number, end: number, leastPx: number): string {
  const first = halfway(samples[start - 1], samples[start]!);
  const last = halfway(samples[end + 1], samples[end]!);
  const lackPx = Math.max(0, leastPx - (last.x - first.x)) / 2;
  const inner = samples.slice(start, end + 1);
  const crest = straightened([
    [first.x - lackPx, first.crest],
    ...inner.map(({ x, crest: y }): Point => [x, y]),
    [last.x + lackPx, last.crest],
  ]);
  const under = (at: Pick<Sample, "x" | "ground" | "crest">, byPx: number) =>
    point(at.x + byPx, Math.max(at.ground, at.crest));
  const ground = [
    under(first, -lackPx),
    ...inner.map((each) => (each.ground >= each.crest ? each.groundPoint : under(each, 0))),
    under(last, lackPx),
  ];
  return `${pathOf(crest)}L${ground.reverse().join("L")}Z`;
}

/** Where a stretch ends: halfway to the sample beyond, or at its own last sample before a gap. */
function halfway(beyond: Sample | undefined, edge: Sample): Pick<Sample, "x" | "ground" | "crest"> {
  if (!beyond || beyond.kind === "hole") return edge;
  return {
    x: (beyond.x + edge.x) / 2,
    ground: (beyond.ground + edge.ground) / 2,
    crest: (beyond.crest + edge.crest) / 2,
  };
}

function gapsOf(samples: readonly Sample[], { plot }: PathFrame): Gap[] {
  return runs(samples, ({ kind }) => kind === "hole").map(([start, end]) => ({
    fromPx: Math.max(plot.left, samples[start - 1]?.x ?? samples[start]!.x),
    toPx: Math.min(plot.right, samples[end + 1]?.x ?? samples[end]!.x),
  }));
}

type Point = readonly [number, number];

/** The points without those that lie on the straight line from the last one kept to the next. */
function straightened(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const [i, [x, y]] of points.entries()) {
    if (!isOnLine(kept.at(-1), points[i + 1], x, y)) kept.push([x, y]);
  }
  return kept;
}

function isOnLine(
  before: Point | undefined,
  after: Point | undefined,
  x: number,
  y: number,
): boolean {
  if (!before || !after || after[0] === before[0]) return false;
  const share = (x - before[0]) / (after[0] - before[0]);
  return Math.abs(before[1] + share * (after[1] - before[1]) - y) < 1e-6;
}

function pathOf(points: readonly Point[]): string {
  return points.length < 2 ? "" : `M${points.map(([x, y]) => point(x, y)).join("L")}`;
}

function point(x: number, y: number): string {
  return `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;
}
