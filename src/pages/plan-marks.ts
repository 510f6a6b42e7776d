import type { Exported } from "../../shared/exports/exported.ts";
import type { Plan, Structure } from "../../shared/plan.ts";
import { reachAt } from "../../shared/reaches.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { namedCorners } from "../../shared/stakes/corner-names.ts";
import { formatStation, lengthIn, type UnitSystem } from "../../shared/units.ts";
import {
  benchmarkMark,
  coursesMark,
  floorMark,
  matchWords,
  overLimitWords,
  PLAN_WORDS,
  sumpWords,
} from "../../shared/words/build-sheet.ts";
import { beside, nearestChainage, spotAt } from "../drawing/line/along.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import { benchmarkOn } from "./plan-benchmark.tsx";
import type { PlanFrame } from "./plan-frame.ts";
import type { Label, Words } from "./plan-labels.ts";
import { ALONE, matchEnds, type OtherPages, toeAt } from "./plan-match.ts";
import type { Spot } from "./plan-paths.ts";
import { everyIntervals, type MarkedStation, markedStations } from "./plan-stations.ts";
import { wayLabels } from "./plan-ways.tsx";
import { workPlaceLabels } from "./plan-work-places.tsx";

/** Stakes nearer to each other than this on paper are not all written, millimetres. */
const APART_MM = 10.4;
/** Nearer to the highest place than this share of their distance a stake gives way to it. */
const NEAR_SHARE = 0.6;
/** Closer than this a corner and a stake are written once, metres (3 ft). */
const MERGE_M = 0.92;
/** Corners closer than this on paper are written one below the other, millimetres. */
const ONE_LABEL_MM = 5;
/** A leg's own direction is looked at so far from its corner, metres. */
const BESIDE_CORNER_M = 0.5;
/** In a building less wide than this the names of its corners stand outside it, millimetres. */
const SMALL_BUILDING_MM = 18;
/** Further from its corner a name is not known to be its own, millimetres. */
const TIE_NAME_MM = 3;

/** All that is written on a plan beside its north arrow and scale, the most important first. */
export function planLabels(of: Exported, frame: PlanFrame, pages: OtherPages = ALONE): Label[] {
  const { plan, line, system } = of;
  const inPlace = { plan, line, frame, system, side: waterSideIn(plan, line.id) };
  const marked = stationsOn(inPlace);
  const urgency = ({ isHighest, isOver }: MarkedStation) => (isHighest ? 0 : isOver ? 1 : 2);
  const urgent = [...marked].sort((a, b) => urgency(a) - urgency(b));
  const labels = [
    ...plan.structures.map((each) => nameLabel(each, frame, system)),
    ...urgent.map((each) => stationLabel(each, inPlace)),
    ...cornerNumbers(marked, inPlace),
    ...matchLabels(pages, inPlace),
    ...tieLabels(plan, frame),
    ...benchmarkLabels(plan, frame, system),
    ...sumpLabels(inPlace),
    ...wayLabels(of, frame),
    ...workPlaceLabels(of, frame),
    ...sideLabels(inPlace),
  ];
  return labels.filter(({ point: [x, y], middles }) => {
    const isOn = x >= 0 && y >= 0 && x <= frame.widthMm && y <= frame.heightMm;
    return isOn || middles !== undefined;
  });
}

interface InPlace {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly frame: PlanFrame;
  readonly system: UnitSystem;
  readonly side: 1 | -1;
}

/** The stations that are written: as many as their distance on paper leaves room for. */
export function stationsOn({ plan, line, frame, system }: InPlace): MarkedStation[] {
  const { fromM, toM, scale } = frame;
  const most = (toM - fromM) / scale.mPerMm / APART_MM;
  const every = everyIntervals(plan, toM - fromM, most);
  return markedStations({ plan, line, system, fromM, toM }, every, NEAR_SHARE);
}

function stationLabel(marked: MarkedStation, inPlace: InPlace): Label {
  const { line, system } = inPlace;
  const { chainageM, station, height, courses, isOver, isHighest } = marked;
  const { point, away } = toeAt(inPlace, chainageM, "water")!;
  const isSteep = Math.abs(away[0]) > 0.6;
  const big: Words = { text: height ?? PLAN_WORDS.noData, look: "big", isOver };
  const count: Words[] = courses === null ? [] : [{ text: coursesMark(courses), look: "small" }];
  const end = endWords(line, chainageM);
  const name: Words = {
    text: [station, isHighest && PLAN_WORDS.highest, end].filter(Boolean).join(" "),
    look: isHighest || end !== "" ? "strong" : "small",
  };
  const flag: Words[] =
    isOver && isHighest
      ? [{ text: overLimitWords(reachAt(line, chainageM).limitM, system), look: "flag" }]
      : [];
  return {
    key: `station ${chainageM}`,
    point,
    words: isSteep ? [big, name, ...count, ...flag] : [name, big, ...count],
    layout: isSteep ? "beside" : "stack",
    ...{ away, reach: "near", isClear: true, orFrom: toeAt(inPlace, chainageM, "land")!.point },
  };
}

function endWords({ kind, totals, stations }: SizedLine, chainageM: number): string {
  const isStart = chainageM === 0;
  if (!isStart && chainageM < totals.lengthM) return "";
  if (kind === "ring") return isStart ? PLAN_WORDS.start : "";
  const end = isStart ? stations[0] : stations.at(-1);
  return end?.greatestHeightM === 0 ? PLAN_WORDS.tieIn : PLAN_WORDS.end;
}

/** The numbers of the line's corners that are no written station. */
function cornerNumbers(marked: readonly MarkedStation[], inPlace: InPlace): Label[] {
  const { line, frame, system } = inPlace;
  return line.cornersM
    .filter((m) => m >= frame.fromM && m <= frame.toM)
    .filter((m) => marked.every(({ chainageM }) => Math.abs(chainageM - m) > MERGE_M))
    .reduce<number[][]>((groups, m) => {
      const last = groups.at(-1);
      if (last && m - last[0]! < ONE_LABEL_MM * frame.scale.mPerMm) last.push(m);
      else groups.push([m]);
      return groups;
    }, [])
    .map((group): Label => {
      const m = group[Math.floor((group.length - 1) / 2)]!;
      return {
        key: `corner ${group.join(" ")}`,
        point: toeAt(inPlace, m, "water")!.point,
        words: group.map((each) => ({ text: formatStation(each, system, 0), look: "small" })),
        ...{ layout: "stack", away: awayAtCorner(m, inPlace), reach: "near", isClear: true },
        orFrom: toeAt(inPlace, m, "land")!.point,
      };
    });
}

/** The way out of a corner, halfway between those of its legs. */
function awayAtCorner(m: number, inPlace: InPlace): Spot {
  const { kind, totals } = inPlace.line;
  const before = kind === "ring" && m < BESIDE_CORNER_M ? totals.lengthM : m - BESIDE_CORNER_M;
  const legs = [before, m + BESIDE_CORNER_M].map((at) => toeAt(inPlace, at, "water")!.away);
  const [x, y] = [legs[0]![0] + legs[1]![0], legs[0]![1] + legs[1]![1]];
  const length = Math.hypot(x, y);
  return length > 1e-6 ? [x / length, y / length] : legs[0]!;
}

function nameLabel(
  { id, name, floorM, outline }: Structure,
  frame: PlanFrame,
  system: UnitSystem,
): Label {
  const floor = floorMark(floorM, system);
  return {
    key: `building ${id}`,
    point: middleOf(outline.map(frame.toSpot)),
    words: [
      { text: name, look: "strong" },
      ...(floor === null ? [] : [{ text: floor, look: "small" } as const]),
    ],
    ...{ layout: "stack", away: [0, -1], reach: "over" },
  };
}

function tieLabels({ structures }: Plan, { toSpot }: PlanFrame): Label[] {
  const corners = namedCorners(structures);
  return structures.flatMap(({ id, outline }) => {
    const spots = outline.map(toSpot);
    const middle = middleOf(spots);
    const inward = isSmall(spots) ? -1 : 1;
    const named = corners.filter(({ structureId }) => structureId === id);
    return named.map(({ name: corner }, i): Label => {
      const [x, y] = spots[i]!;
      const far = Math.hypot(middle[0] - x, middle[1] - y) || 1;
      return {
        key: `tie ${corner}`,
        point: [x, y],
        words: [{ text: corner, look: "strong" }],
        layout: "stack",
        away: [(inward * (middle[0] - x)) / far, (inward * (middle[1] - y)) / far],
        reach: "around",
        mostMm: TIE_NAME_MM,
      };
    });
  });
}

function benchmarkLabels(plan: Plan, frame: PlanFrame, system: UnitSystem): Label[] {
  const mark = benchmarkOn(plan, frame);
  if (!mark) return [];
  return [
    {
      ...{ key: "benchmark", point: mark.spot, layout: "stack", away: [1, 0], reach: "around" },
      isClear: true,
      words: [
        { text: benchmarkMark(mark.benchmark), look: "strong" },
        { text: lengthIn(mark.benchmark.elevationM, system).toFixed(2), look: "small" },
      ],
    },
  ];
}

function sumpLabels({ plan, line, frame, system, side }: InPlace): Label[] {
  const { holding } = line;
  if (!holding?.inside) return [];
  const at = holding.inside.lowestAt;
  const near = nearestChainage(line.walk, at);
  const hasPumps = (plan.workPlaces ?? []).some(({ kind }) => kind === "pumps");
  const inward = near && toeAt({ line, frame, side }, near.chainageM, "land");
  return [
    {
      key: "sump",
      point: frame.toSpot(at),
      words: sumpWords(holding, near, hasPumps, system).map((text, i) => ({
        text,
        look: i === 1 ? "small" : "strong",
      })),
      ...{ layout: "stack", away: inward?.away ?? [1, 0], reach: "around", hasLeader: true },
    },
  ];
}

function matchLabels({ before, after }: OtherPages, inPlace: InPlace): Label[] {
  const { frame, system } = inPlace;
  const ends = [
    { page: before, atM: frame.fromM },
    { page: after, atM: frame.toM },
  ];
  return ends.flatMap(({ page, atM }) => {
    const found = page === null ? null : matchEnds(inPlace, atM);
    if (page === null || !found) return [];
    const [[fromX, fromY], [x, y]] = found;
    const long = Math.hypot(x - fromX, y - fromY) || 1;
    return {
      key: `match ${atM}`,
      point: [x, y],
      words: [{ text: matchWords(atM, page, system), look: "strong" }],
      ...{ layout: "stack", away: [(x - fromX) / long, (y - fromY) / long], reach: "around" },
    } as const;
  });
}

/** How far from the toe the sides may be named, and where along the line, first choice first. */
const SIDE_MM = [9, 7, 13, 18, 24, 32, 5.5] as const;
const SIDE_SHARES = [0.12, 0.35, 0.6, 0.85, 0.05, 0.25, 0.5, 0.7, 0.95] as const;

/** Which side is which: off the line, and no nearer to another part of it. */
function sideLabels(inPlace: InPlace): Label[] {
  const { line, frame } = inPlace;
  const { fromM, toM, scale } = frame;
  return (["water", "land"] as const).map((which) => {
    const middles = SIDE_MM.flatMap((mm) =>
      SIDE_SHARES.flatMap((share) => {
        const chainageM = fromM + share * (toM - fromM);
        const spot = spotAt(line.walk, chainageM);
        if (!spot) return [];
        const sign = which === "water" ? inPlace.side : -inPlace.side;
        const toeM = sign > 0 ? spot.toeLeftM : spot.toeRightM;
        const outM = toeM + mm * scale.mPerMm;
        const place = beside(spot, sign * outM);
        const near = nearestChainage(line.walk, [place[0], place[1]]);
        return near && near.awayM > 0.9 * outM ? [frame.toSpot(place)] : [];
      }),
    );
    const text = which === "water" ? PLAN_WORDS.waterSide : PLAN_WORDS.landSide;
    return {
      ...{ key: which, point: middles[0] ?? [0, 0], words: [{ text, look: "side" }], middles },
      ...{ layout: "stack", away: [0, 1], reach: "over", isClear: true },
    };
  });
}

function isSmall(spots: readonly Spot[]): boolean {
  const spans = [0, 1].map((axis) => {
    const values = spots.map((spot) => spot[axis]!);
    return Math.max(...values) - Math.min(...values);
  });
  return Math.min(...spans) < SMALL_BUILDING_MM;
}

function middleOf(spots: readonly Spot[]): Spot {
  const sum = spots.reduce<[number, number]>(([a, b], [x, y]) => [a + x, b + y], [0, 0]);
  return [sum[0] / spots.length, sum[1] / spots.length];
}
