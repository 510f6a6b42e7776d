import type { Feature, FeatureCollection, Position } from "geojson";
import { moved } from "../../../shared/line-shapes/offset.ts";
import {
  cornerArc,
  corners,
  type LegRun,
  legRuns,
  place,
  turnAt,
} from "../../../shared/line-shapes/walk-legs.ts";
import { isStandard, reachAt } from "../../../shared/reaches.ts";
import type { Reach, SizedLine, Walk } from "../../../shared/sizing-types.ts";
import { beside, spotAt } from "./along.ts";
import { directionOf, type LabelReach } from "./label-offset.ts";

/** How many edges there are to tell sections apart by; more sections than that share them. */
export const EDGE_PATTERNS = 3;
/** Dashes of an edge, in widths of its line; null is drawn through. */
export const EDGE_DASHES: readonly (readonly number[] | null)[] = [null, [3, 1.6], [0.9, 1.1]];
/** How far a reach's end stands out of the toes, metres. */
const END_OUT_M = 0.6;
/** Distance of a label from the toe. */
export const REACH_LABEL: LabelReach = { em: 0.9, spreadEm: 0 };

/** A section other than the plan's own, and the edge it is drawn with on its line. */
export interface EdgedSection {
  readonly section: string;
  readonly name: string;
  /** 0 ... {@link EDGE_PATTERNS} - 1. */
  readonly pattern: number;
}

/** The sections of a line that are not the plan's own, in the order in which they come along it. */
export function edgedSections({ reaches }: Pick<SizedLine, "reaches">): EdgedSection[] {
  const others = reaches.filter((reach) => !isStandard(reach));
  return others
    .filter((reach, i) => others.findIndex(({ section }) => section === reach.section) === i)
    .map(({ section, sectionName }, index) => ({
      section,
      name: sectionName,
      pattern: index % EDGE_PATTERNS,
    }));
}

/**
 * Where a line is built otherwise than the rest: for each reach of another section its toes (`kind: "edge"`,
 * `pattern`, the outside on their left) and its name beside the middle (`kind: "label"`, `text`, `anchor`, `direction`); and across the line
 * every place where two reaches meet (`kind: "end"`).
 * @param side the water's side, left (+1) or right (-1) of chainage, where names stand
 */
export function reachShapes(line: SizedLine, side: 1 | -1): FeatureCollection {
  const sections = edgedSections(line);
  const patternOf = new Map(sections.map(({ section, pattern }) => [section, pattern]));
  const edges: Position[][][] = Array.from({ length: EDGE_PATTERNS }, () => []);
  const { walk } = line;
  const edgeAt = (chainageM: number) => patternOf.get(reachAt(line, chainageM).section) ?? null;
  const between = (i: number) => {
    const isBuilt = walk.greatestHeightM[i]! > 0 || walk.greatestHeightM[i + 1]! > 0;
    return isBuilt ? edgeAt((walk.chainageM[i]! + walk.chainageM[i + 1]!) / 2) : null;
  };
  for (const run of legRuns(walk, between)) {
    if (run.kind !== null) edges[run.kind]!.push(...toes(line, run));
  }
  for (const [before, after] of corners(walk, line.kind === "ring")) {
    const edge = edgeAt(walk.chainageM[after]!);
    const isBuilt = walk.greatestHeightM[before]! > 0 || walk.greatestHeightM[after]! > 0;
    const arc = edge === null || !isBuilt ? null : cornerArc(walk, before, after);
    if (arc) edges[edge!]!.push(turnAt(walk, before, after) < 0 ? arc : arc.reverse());
  }
  const features: Feature[] = [
    ...edges.flatMap((lines, pattern) =>
      lines.length === 0 ? [] : [multiLine(lines, { kind: "edge", pattern })],
    ),
    ...ends(line),
    ...line.reaches
      .filter((reach) => !isStandard(reach))
      .flatMap((each) => label(walk, each, side)),
  ];
  return { type: "FeatureCollection", features };
}

/**
 * Both toes of a stretch on one leg, with what is outside to the left of their direction; on the inner side of a
 * corner they stop where the next leg's begin.
 */
function toes({ walk, kind }: SizedLine, run: LegRun<unknown>): Position[][] {
  const count = walk.chainageM.length;
  const isRing = kind === "ring";
  const before = run.from > 0 ? run.from - 1 : isRing ? count - 1 : null;
  const after = run.to + 1 < count ? run.to + 1 : isRing ? 0 : null;
  const east = walk.leftNormal[2 * run.normalOf]!;
  const north = walk.leftNormal[2 * run.normalOf + 1]!;
  return ([1, -1] as const).flatMap((which) => {
    const toeM = which === 1 ? walk.toeLeftM : walk.toeRightM;
    const cutM = (a: number | null, b: number | null, at: number) => {
      if (a === null || b === null || walk.leg[a] === walk.leg[b]) return 0;
      return Math.max(0, (toeM[at]! || 0) * Math.tan((which * turnAt(walk, a, b)) / 2));
    };
    const fromM = walk.chainageM[run.from]! + cutM(before, run.from, run.from);
    const toM = walk.chainageM[run.to]! - cutM(run.to, after, run.to);
    const path: Position[] = [];
    for (let i = run.from; i <= run.to; i++) {
      if (walk.chainageM[i]! < fromM || walk.chainageM[i]! > toM) continue;
      const outM = which * (toeM[i]! || 0);
      path.push(moved(place(walk, i), east * outM, north * outM));
    }
    if (path.length < 2) return [];
    return [which === 1 ? path : path.reverse()];
  });
}

/** Lines across the levee where reaches meet; on a ring at its closing point too when it is divided. */
function ends(line: SizedLine): Feature[] {
  const { reaches, walk } = line;
  if (reaches.length < 2) return [];
  const first = reaches[0]!;
  const isClosing = line.kind === "ring" && first.section !== reaches.at(-1)!.section;
  const meetM = [...(isClosing ? [0] : []), ...reaches.slice(1).map(({ fromM }) => fromM)];
  const across = meetM.flatMap((atM) => {
    const spot = spotAt(walk, atM);
    if (!spot) return [];
    const [left, right] = [spot.toeLeftM + END_OUT_M, spot.toeRightM + END_OUT_M];
    return [[beside(spot, left), beside(spot, -right)]];
  });
  return [multiLine(across, { kind: "end" })];
}

function label(walk: Walk, { fromM, toM, sectionName }: Reach, side: 1 | -1): Feature[] {
  const spot = spotAt(walk, (fromM + toM) / 2);
  if (!spot) return [];
  const [east, north] = [spot.left[0] * side, spot.left[1] * side];
  const toeM = side > 0 ? spot.toeLeftM : spot.toeRightM;
  return [
    {
      type: "Feature",
      properties: {
        kind: "label",
        text: sectionName,
        anchor: anchorFor(east, north),
        direction: directionOf(east, north),
      },
      geometry: { type: "Point", coordinates: beside(spot, side * toeM) },
    },
  ];
}

/** The part of a label that stands nearest to the line it lies beside. */
function anchorFor(east: number, north: number): string {
  const across = east > 0.38 ? "left" : east < -0.38 ? "right" : "";
  const up = north > 0.38 ? "bottom" : north < -0.38 ? "top" : "";
  return [up, across].filter(Boolean).join("-") || "center";
}

function multiLine(lines: Position[][], properties: object): Feature {
  return {
    type: "Feature",
    properties: { ...properties },
    geometry: { type: "MultiLineString", coordinates: lines },
  };
}
