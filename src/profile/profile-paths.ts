import { HEIGHT_CLASSES, heightClass } from "../../shared/height-class.ts";
import type { Walk } from "../../shared/sizing-types.ts";
import { pickSamples } from "./picked-samples.ts";
import type { ProfileFrame } from "./profile-frame.ts";

/** Narrowest a stretch over the limit is drawn, pixels: it may be short, but it must be seen. */
const LEAST_OVER_PX = 2;

/** A gap in the data along the line, pixels. */
export interface Gap {
  readonly fromPx: number;
  readonly toPx: number;
}

/** SVG path data of a long profile, in the pixels of its frame. */
export interface ProfilePaths {
  readonly groundLine: string;
  readonly groundFill: string;
  readonly lowestLine: string;
  /** Between the ground at the centre line and the lowest under the base. */
  readonly underFill: string;
  /** Levee between ground and crest, one path per height class. */
  readonly bands: readonly string[];
  /** Levee whose base reaches ground without data: its height is not known. */
  readonly unknownBand: string;
  readonly crestLine: string;
  readonly waterLine: string;
  readonly limitLine: string;
  readonly gaps: readonly Gap[];
}

/** Class of a sample's levee, or what is missing to tell it. */
type Kind = number | "hole" | "unknown";

interface Sample {
  readonly x: number;
  readonly ground: number;
  readonly crest: number;
  readonly kind: Kind;
}

/** Draws a walk into a frame. Ground is never drawn between a sample with data and one without. */
export function profilePaths(walk: Walk, limitM: number, frame: ProfileFrame): ProfilePaths {
  const { plot, stretch } = frame;
  const picked = pickSamples(walk, stretch.fromM, stretch.toM, Math.ceil(plot.right - plot.left));
  const samples = picked.map((index) => sampleOf(walk, index, limitM, frame));
  const lowest = picked.map((index) => frame.y(walk.lowestGroundM[index]!));
  const bands = Array.from({ length: HEIGHT_CLASSES }, () => "");
  let unknownBand = "";
  for (const [start, end] of runs(samples, (sample) => sample.kind)) {
    const kind = samples[start]!.kind;
    if (kind === "unknown") unknownBand += band(samples, start, end, 0);
    if (typeof kind === "number" && kind >= 0) {
      bands[kind] += band(samples, start, end, kind === HEIGHT_CLASSES - 1 ? LEAST_OVER_PX : 0);
    }
  }
  const known = runs(samples, ({ kind }) => kind === "hole").filter(
    ([start]) => samples[start]!.kind !== "hole",
  );
  const ends = runs(lowest, Number.isNaN).filter(([start]) => !Number.isNaN(lowest[start]!));
  const groundOf = ([start, end]: Run) =>
    polyline(samples.slice(start, end + 1).map(({ x, ground }) => [x, ground]));
  return {
    groundLine: known.map((run) => `M${groundOf(run)}`).join(""),
    groundFill: known
      .map(
        (run) =>
          `M${point(samples[run[0]]!.x, plot.bottom)}L${groundOf(run)}L${point(samples[run[1]]!.x, plot.bottom)}Z`,
      )
      .join(""),
    lowestLine: ends
      .map(
        ([start, end]) =>
          `M${polyline(lowest.slice(start, end + 1).map((y, i) => [samples[start + i]!.x, y]))}`,
      )
      .join(""),
    underFill: ends
      .map(([start, end]) => {
        const under = samples.slice(start, end + 1);
        const below = under.map(({ x }, i) => [x, lowest[start + i]!] as const).reverse();
        return `M${polyline(under.map(({ x, ground }) => [x, ground]))}L${polyline(below)}Z`;
      })
      .join(""),
    bands,
    unknownBand,
    crestLine: levelLine(picked, samples, (index) => frame.y(walk.crestM[index]!)),
    waterLine: levelLine(picked, samples, (index) => frame.y(walk.waterM[index]!)),
    limitLine: levelLine(picked, samples, (index) => frame.y(walk.crestM[index]! - limitM)),
    gaps: gapsOf(samples, frame),
  };
}

function sampleOf(walk: Walk, index: number, limitM: number, frame: ProfileFrame): Sample {
  const greatest = walk.greatestHeightM[index]!;
  const isHole = Number.isNaN(walk.groundM[index]!);
  const known = Number.isNaN(greatest) ? "unknown" : heightClass(greatest, limitM);
  return {
    x: frame.x(walk.chainageM[index]!),
    ground: frame.y(walk.groundM[index]!),
    crest: frame.y(walk.crestM[index]!),
    kind: isHole ? "hole" : known,
  };
}

type Run = readonly [number, number];

function runs<T>(items: readonly T[], keyOf: (item: T) => unknown): Run[] {
  const found: Run[] = [];
  let start = 0;
  for (let i = 1; i <= items.length; i++) {
    if (i < items.length && keyOf(items[i]!) === keyOf(items[start]!)) continue;
    found.push([start, i - 1]);
    start = i;
  }
  return items.length === 0 ? [] : found;
}

function band(samples: readonly Sample[], start: number, end: number, leastPx: number): string {
  const corners = samples
    .slice(start, end + 1)
    .map(({ x, ground, crest }) => ({ x, ground, crest }));
  const before = halfway(samples[start - 1], samples[start]!);
  const after = halfway(samples[end + 1], samples[end]!);
  if (before) corners.unshift(before);
  if (after) corners.push(after);
  const lackPx = leastPx - (corners.at(-1)!.x - corners[0]!.x);
  if (lackPx > 0) {
    corners.unshift({ ...corners[0]!, x: corners[0]!.x - lackPx / 2 });
    corners.push({ ...corners.at(-1)!, x: corners.at(-1)!.x + lackPx / 2 });
  }
  const crest = corners.map((corner) => [corner.x, corner.crest] as const);
  const ground = corners.map(
    (corner) => [corner.x, Math.max(corner.ground, corner.crest)] as const,
  );
  return `M${polyline(crest)}L${polyline(ground.reverse())}Z`;
}

function halfway(beyond: Sample | undefined, edge: Sample) {
  if (!beyond || beyond.kind === "hole") return null;
  return {
    x: (beyond.x + edge.x) / 2,
    ground: (beyond.ground + edge.ground) / 2,
    crest: (beyond.crest + edge.crest) / 2,
  };
}

function gapsOf(samples: readonly Sample[], { plot }: ProfileFrame): Gap[] {
  return runs(samples, ({ kind }) => kind === "hole")
    .filter(([start]) => samples[start]!.kind === "hole")
    .map(([start, end]) => ({
      fromPx: Math.max(plot.left, samples[start - 1]?.x ?? samples[start]!.x),
      toPx: Math.min(plot.right, samples[end + 1]?.x ?? samples[end]!.x),
    }));
}

function levelLine(
  picked: readonly number[],
  samples: readonly Sample[],
  yOf: (index: number) => number,
): string {
  const points = picked.map((index, i) => [samples[i]!.x, yOf(index)] as const);
  const bends = points.filter(([x, y], i) => !isOnLine(points[i - 1], points[i + 1], x, y));
  return bends.length < 2 ? "" : `M${polyline(bends)}`;
}

function isOnLine(
  before: readonly [number, number] | undefined,
  after: readonly [number, number] | undefined,
  x: number,
  y: number,
): boolean {
  if (!before || !after || after[0] === before[0]) return false;
  const share = (x - before[0]) / (after[0] - before[0]);
  return Math.abs(before[1] + share * (after[1] - before[1]) - y) < 1e-6;
}

function polyline(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y]) => point(x, y)).join("L");
}

function point(x: number, y: number): string {
  return `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;
}
