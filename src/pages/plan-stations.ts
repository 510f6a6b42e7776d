import type { Plan } from "../../shared/plan.ts";
import { coursesFor } from "../../shared/quantities.ts";
import { reachAt } from "../../shared/reaches.ts";
import { sectionById } from "../../shared/sections.ts";
import type { SizedLine, Station } from "../../shared/sizing-types.ts";
import { formatStation, lengthIn, type UnitSystem } from "../../shared/units.ts";

/** A station that is written beside the line or under its profile. */
export interface MarkedStation {
  readonly chainageM: number;
  readonly station: string;
  /** Low toe to top, without its unit; null where there is no elevation data. */
  readonly height: string | null;
  /** Null where it is not of bags, too. */
  readonly courses: string | null;
  /** Ground at the stake; null where there is no elevation data. */
  readonly ground: string | null;
  readonly isOver: boolean;
  readonly isHighest: boolean;
}

interface Wanted {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly system: UnitSystem;
  readonly fromM: number;
  readonly toM: number;
}

const SAME_M = 1e-3;
/** A stake of the interval may stand this far from it: in the place of one where the line goes over its limit, metres. */
const NEAR_M = 0.31;

/**
 * The stakes at every so many of the plan's intervals between two chainages, and the highest place of the line.
 * @param nearShare share of a step within which a stake gives way to the highest place
 */
export function markedStations(
  wanted: Wanted,
  everyIntervals: number,
  nearShare: number,
): MarkedStation[] {
  const { plan, line, system, fromM, toM } = wanted;
  const stepM = plan.practice.stationIntervalM * everyIntervals;
  const highest = highestOf(wanted);
  const apart = line.stations.filter(({ chainageM, reason }) => {
    if (chainageM < fromM - SAME_M || chainageM > toM + SAME_M) return false;
    if (highest && Math.abs(chainageM - highest.chainageM) < nearShare * stepM) return false;
    if (reason === "end") return line.kind === "line";
    const stepAtM = Math.round(chainageM / stepM) * stepM;
    const awayM = Math.abs(chainageM - stepAtM);
    if (reason === "start" || awayM < SAME_M) return true;
    return awayM < NEAR_M && nearestTo(line, stepAtM) === chainageM;
  });
  const marked = apart.map((station) => markedFrom(station, system));
  return [...marked, ...(highest ? [highest] : [])].sort((a, b) => a.chainageM - b.chainageM);
}

/** Chainage of the stake that stands nearest to a place. */
function nearestTo({ stations }: SizedLine, atM: number): number {
  return stations.reduce(
    (best, { chainageM }) => (Math.abs(chainageM - atM) < Math.abs(best - atM) ? chainageM : best),
    Number.POSITIVE_INFINITY,
  );
}

/** How many of the plan's intervals apart stations are, so that at most `most` of them are between two chainages. */
export function everyIntervals(plan: Plan, lengthM: number, most: number): number {
  const count = lengthM / plan.practice.stationIntervalM;
  return [1, 2, 4, 8, 10, 20, 40, 80, 100].find((each) => count / each <= most) ?? 200;
}

function markedFrom(station: Station, system: UnitSystem): MarkedStation {
  const { chainageM, greatestHeightM, coursesAtLowToe, groundM, isOverLimit } = station;
  return {
    chainageM,
    station: formatStation(chainageM, system, 0),
    height: heightFigure(greatestHeightM, system),
    courses: coursesAtLowToe === null ? null : String(coursesAtLowToe),
    ground: groundM === null ? null : lengthIn(groundM, system).toFixed(2),
    isOver: isOverLimit === true,
    isHighest: false,
  };
}

function highestOf({ plan, line, system, fromM, toM }: Wanted): MarkedStation | null {
  const { greatestHeightM, greatestHeightAtM } = line.totals;
  if (!(greatestHeightM > 0) || greatestHeightAtM < fromM || greatestHeightAtM > toM) return null;
  const reach = reachAt(line, greatestHeightAtM);
  const type = sectionById(reach.section);
  const isOfBags = type.ok && type.value.fill === "bags";
  const { chainageM, groundM } = line.walk;
  const nearest = chainageM.findIndex((m) => m >= greatestHeightAtM - SAME_M);
  const ground = groundM[nearest] ?? Number.NaN;
  return {
    chainageM: greatestHeightAtM,
    station: formatStation(greatestHeightAtM, system, 0),
    height: heightFigure(greatestHeightM, system),
    courses: isOfBags ? String(coursesFor(greatestHeightM, plan.section)) : null,
    ground: Number.isNaN(ground) ? null : lengthIn(ground, system).toFixed(2),
    isOver: greatestHeightM > reach.limitM + 1e-9,
    isHighest: true,
  };
}

/** One decimal of a foot, two of a metre. */
function heightFigure(m: number | null, system: UnitSystem): string | null {
  return m === null ? null : lengthIn(m, system).toFixed(system === "us" ? 1 : 2);
}
