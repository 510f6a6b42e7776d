import { HEIGHT_CLASSES, heightClass } from "../../../shared/height-class.ts";
import type { Plan, Section } from "../../../shared/plan.ts";
import { coursesFor } from "../../../shared/quantities.ts";
import { isStandard, reachAt } from "../../../shared/reaches.ts";
import type { SizedLine, Station } from "../../../shared/sizing-types.ts";
import { formatLength, formatStation, type UnitSystem } from "../../../shared/units.ts";
import { courseWords } from "../../../shared/words/courses.ts";
import { nearestSample } from "./picked-samples.ts";

/** What the walk says at one of its samples. */
export interface Reading {
  readonly index: number;
  readonly chainageM: number;
  /** Crest less ground at the centre line, metres; null where that ground is not known. */
  readonly heightM: number | null;
  /** Crest less the lowest ground under the base, metres; null where any of it is not known. */
  readonly greatestHeightM: number | null;
}

/** Heights closer than this are told as one, metres: what the eye reads off is no finer. */
const SAME_HEIGHT_M = 0.03;

/** The sample nearest to a chainage, kept inside the line; null for a line without samples. */
export function readingAt({ walk }: SizedLine, chainageM: number): Reading | null {
  const index = nearestSample(walk.chainageM, chainageM);
  if (index < 0) return null;
  return {
    index,
    chainageM: walk.chainageM[index]!,
    heightM: known(walk.heightM[index]!),
    greatestHeightM: known(walk.greatestHeightM[index]!),
  };
}

/** True where the levee is over the limit of its reach. */
export function isOverAt(line: SizedLine, chainageM: number): boolean {
  const heightM = readingAt(line, chainageM)?.greatestHeightM ?? 0;
  return heightClass(heightM, reachAt(line, chainageM).limitM) === HEIGHT_CLASSES - 1;
}

/** A station with its height, or why it has none: "4+18: 4.4 ft". */
export function stationWords(reading: Reading, unitSystem: UnitSystem): string {
  const station = formatStation(reading.chainageM, unitSystem);
  const { greatestHeightM } = reading;
  if (greatestHeightM === null) return `${station}: no elevation data`;
  if (greatestHeightM <= 0) return `${station}: above top of levee`;
  return `${station}: ${formatLength(greatestHeightM, unitSystem)}`;
}

function known(heightM: number): number | null {
  return Number.isNaN(heightM) ? null : heightM;
}

/** True when ground falling across the base makes the greatest height worth telling apart. */
function hasTwoHeights({
  heightM,
  greatestHeightM,
}: {
  readonly heightM: number | null;
  readonly greatestHeightM: number | null;
}): boolean {
  return heightM !== null && greatestHeightM !== null && greatestHeightM - heightM > SAME_HEIGHT_M;
}

/** What a reach is built as: the bags of the plan's own section, or another section by its name. */
export type BuiltAs = Section | string;

/** What a line is built as at a chainage. */
export function builtAt(line: SizedLine, chainageM: number, { section }: Plan): BuiltAs {
  const reach = reachAt(line, chainageM);
  return isStandard(reach) ? section : reach.sectionName;
}

/** A reading as it is read out ("station 4+81, height 4.3 ft, 13 courses"). */
export function spokenWords(reading: Reading, built: BuiltAs, unitSystem: UnitSystem): string {
  const [height, ...rest] = heightWords(reading, built, unitSystem);
  const isBuilt = (reading.greatestHeightM ?? 0) > 0;
  const told = hasTwoHeights(reading)
    ? `greatest height ${height!.replace(" greatest", "")}`
    : `height ${height}`;
  const said = isBuilt ? told : height!;
  return [`station ${formatStation(reading.chainageM, unitSystem)}`, said, ...rest].join(", ");
}

function heightWords(reading: Reading, built: BuiltAs, unitSystem: UnitSystem): string[] {
  const { heightM, greatestHeightM } = reading;
  if (heightM === null) return ["no elevation data"];
  if (greatestHeightM === null) return ["ground under the base not known"];
  if (greatestHeightM <= 0) return ["ground above the top of levee"];
  const greatest = formatLength(greatestHeightM, unitSystem);
  if (typeof built === "string") {
    const centre = `${formatLength(heightM, unitSystem)} at center`;
    return hasTwoHeights(reading) ? [`${greatest} greatest`, centre, built] : [greatest, built];
  }
  const courses = coursesFor(heightM, built);
  if (!hasTwoHeights(reading)) return [greatest, courseWords(courses)];
  return [`${greatest} greatest`, centreWords(heightM, courses, unitSystem)];
}

/** Courses a crew counts at the centre line and at the low toe, where the ground falls across the base. */
export function toeWords(heightM: number, greatestHeightM: number, section: Section): string {
  const [centre, low] = [coursesFor(heightM, section), coursesFor(greatestHeightM, section)];
  if (centre === low) return courseWords(centre);
  return `${courseWords(centre)} at center, ${low} at the low toe`;
}

/** Height and courses at the centre line, where they are not those of the lowest ground. */
function centreWords(heightM: number, courses: number, unitSystem: UnitSystem): string {
  return `${formatLength(heightM, unitSystem)} and ${courseWords(courses)} at center`;
}

/** One sample on (+1) or back (-1) from a chainage, metres. */
export function nextSampleM({ walk }: SizedLine, chainageM: number, way: 1 | -1): number {
  const { chainageM: samples } = walk;
  const here = nearestSample(samples, chainageM);
  let next = here + way;
  while (samples[next] === samples[here]) next += way;
  return samples[next] ?? samples[here] ?? 0;
}

/** The next station after (+1) or before (-1) a chainage, metres; the line's end beyond the last. */
export function nextStationM(line: SizedLine, chainageM: number, way: 1 | -1): number {
  const stations: readonly Station[] = line.stations;
  const beyond = stations
    .map((station) => station.chainageM)
    .filter((each) => (each - chainageM) * way > 1e-6);
  const nearest = way > 0 ? Math.min(...beyond) : Math.max(...beyond);
  if (Number.isFinite(nearest)) return nearest;
  return way > 0 ? line.totals.lengthM : 0;
}
