import type { Exported } from "../../shared/exports/exported.ts";
import type { Plan } from "../../shared/plan.ts";
import { reachAt } from "../../shared/reaches.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { namedCorners } from "../../shared/stakes/corner-names.ts";
import { formatStation, type UnitSystem } from "../../shared/units.ts";
import {
  coursesMark,
  floorMark,
  overLimitWords,
  PLAN_WORDS,
  sumpWords,
} from "../../shared/words/build-sheet.ts";
import { beside, nearestChainage, spotAt } from "../drawing/line/along.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import type { PlanFrame } from "./plan-frame.ts";
import type { Label, Words } from "./plan-labels.ts";
import type { Spot } from "./plan-paths.ts";
import { everyIntervals, type MarkedStation, markedStations } from "./plan-stations.ts";

/** Stakes nearer to each other than this on paper are not all written, millimetres. */
const APART_MM = 10.4;
/** Nearer to the highest place than this share of their distance a stake gives way to it. */
const NEAR_SHARE = 0.6;
/** Closer than this a corner and a stake are written once, metres (3 ft). */
const MERGE_M = 0.92;

/** All that is written on a plan beside its north arrow and scale, the most important first. */
export function planLabels(of: Exported, frame: PlanFrame): Label[] {
  const { plan, line, system } = of;
  const inPlace = { plan, line, frame, system, side: waterSideIn(plan, line.id) };
  const marked = stationsOn(inPlace);
  const urgent = marked.filter(({ isHighest, isOver }) => isHighest || isOver);
  const others = marked.filter((each) => !urgent.includes(each));
  return [
    ...buildingLabels(plan, frame, system),
    ...urgent.map((each) => stationLabel(each, inPlace)),
    ...others.map((each) => stationLabel(each, inPlace)),
    ...sumpLabels(inPlace),
    ...others.flatMap((each) => stationNumber(each, inPlace)),
    ...cornerNumbers(marked, inPlace),
    ...sideLabels(inPlace),
  ];
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

/** A point on the toe of one side at a chainage, and the way out from there; null without samples. */
export function toeAt(
  { line, frame, side }: Pick<InPlace, "line" | "frame" | "side">,
  chainageM: number,
  which: "water" | "land",
): { readonly point: Spot; readonly away: Spot } | null {
  const spot = spotAt(line.walk, chainageM);
  if (!spot) return null;
  const sign = which === "water" ? side : -side;
  const toeM = sign > 0 ? spot.toeLeftM : spot.toeRightM;
  return {
    point: frame.toSpot(beside(spot, sign * toeM)),
    away: [sign * spot.left[0], -sign * spot.left[1]],
  };
}

function stationLabel(marked: MarkedStation, inPlace: InPlace): Label {
  const { line, system } = inPlace;
  const { chainageM, station, height, courses, isOver, isHighest } = marked;
  const { point, away } = toeAt(inPlace, chainageM, "water")!;
  const isSteep = Math.abs(away[0]) > 0.6 || isHighest || isOver;
  const big: Words = { text: height ?? PLAN_WORDS.noData, look: "big", isOver };
  const count: Words[] = courses === null ? [] : [{ text: coursesMark(courses), look: "small" }];
  const end = endWords(line, chainageM);
  const isEnd = end !== "";
  const name = [station, isHighest && PLAN_WORDS.highest, end].filter(Boolean).join(" ");
  const flag: Words[] =
    isOver && isHighest
      ? [{ text: overLimitWords(reachAt(line, chainageM).limitM, system), look: "flag" }]
      : [];
  return {
    key: `station ${chainageM}`,
    point,
    words: isSteep
      ? [big, { text: name, look: isHighest ? "strong" : "small" }, ...count, ...flag]
      : [big, ...(isEnd ? [{ text: name, look: "strong" } as const] : []), ...count],
    layout: isSteep ? "beside" : "stack",
    away,
    reach: isHighest || isOver ? "far" : "near",
  };
}

function endWords({ kind, totals, stations }: SizedLine, chainageM: number): string {
  const isStart = chainageM === 0;
  if (!isStart && chainageM < totals.lengthM) return "";
  if (kind === "ring") return isStart ? PLAN_WORDS.start : "";
  const end = isStart ? stations[0] : stations.at(-1);
  return end?.greatestHeightM === 0 ? PLAN_WORDS.tieIn : PLAN_WORDS.end;
}

/** The number of a station on the land side, where its figures are above or below the line. */
function stationNumber(marked: MarkedStation, inPlace: InPlace): Label[] {
  const { chainageM, station } = marked;
  const { away: out } = toeAt(inPlace, chainageM, "water")!;
  if (Math.abs(out[0]) > 0.6 || endWords(inPlace.line, chainageM) !== "") return [];
  const { point, away } = toeAt(inPlace, chainageM, "land")!;
  const words: Words[] = [{ text: station, look: "small" }];
  return [{ key: `number ${chainageM}`, point, words, layout: "stack", away, reach: "close" }];
}

/** The numbers of the line's corners that are no written station. */
function cornerNumbers(marked: readonly MarkedStation[], inPlace: InPlace): Label[] {
  const { line, frame, system } = inPlace;
  return line.cornersM
    .filter((m) => m >= frame.fromM && m <= frame.toM)
    .filter((m) => marked.every(({ chainageM }) => Math.abs(chainageM - m) > MERGE_M))
    .map((m) => {
      const { point, away } = toeAt(inPlace, m, "land")!;
      const words: Words[] = [{ text: formatStation(m, system, 0), look: "small" }];
      return { key: `corner ${m}`, point, words, layout: "stack", away, reach: "around" } as const;
    });
}

function buildingLabels({ structures }: Plan, frame: PlanFrame, system: UnitSystem): Label[] {
  const corners = namedCorners(structures);
  return structures.flatMap(({ id, name, floorM, outline }) => {
    const spots = outline.map(frame.toSpot);
    const middle = middleOf(spots);
    const floor = floorMark(floorM, system);
    const title: Label = {
      key: `building ${id}`,
      point: middle,
      words: [
        { text: name, look: "strong" },
        ...(floor === null ? [] : [{ text: floor, look: "small" } as const]),
      ],
      ...{ layout: "stack", away: [0, -1], reach: "over" },
    };
    const named = corners.filter(({ structureId }) => structureId === id);
    return [
      title,
      ...named.map(({ name: corner }, i): Label => {
        const [x, y] = spots[i]!;
        const far = Math.hypot(middle[0] - x, middle[1] - y) || 1;
        return {
          key: `tie ${corner}`,
          point: [x, y],
          words: [{ text: corner, look: "strong" }],
          layout: "stack",
          away: [(middle[0] - x) / far, (middle[1] - y) / far],
          reach: "around",
        };
      }),
    ];
  });
}

function sumpLabels({ line, frame, system, side }: InPlace): Label[] {
  const { holding } = line;
  if (!holding?.inside) return [];
  const at = holding.inside.lowestAt;
  const near = nearestChainage(line.walk, at);
  const inward = near && toeAt({ line, frame, side }, near.chainageM, "land");
  return [
    {
      key: "sump",
      point: frame.toSpot(at),
      words: sumpWords(holding, near, system).map((text, i) => ({
        text,
        look: i === 1 ? "small" : "strong",
      })),
      ...{ layout: "stack", away: inward?.away ?? [1, 0], reach: "around", hasLeader: true },
    },
  ];
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
      ...{ layout: "stack", away: [0, 1], reach: "over" },
    };
  });
}

function middleOf(spots: readonly Spot[]): Spot {
  const sum = spots.reduce<[number, number]>(([a, b], [x, y]) => [a + x, b + y], [0, 0]);
  return [sum[0] / spots.length, sum[1] / spots.length];
}
