import { INCH_M } from "../constants.ts";
import { SETTLING_SHARE } from "../settling.ts";
import type { SizedLine, Station, StationReason } from "../sizing-types.ts";
import type { SurveyedGround } from "../survey/surveyed-ground.ts";
import {
  formatLength,
  formatShare,
  formatStation,
  grouped,
  lengthFrom,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { tapeFigure } from "./stake-place.ts";

/** What a crew does at each stake, first things first. */
interface StakeLead {
  readonly call: string;
  readonly mark: string;
  readonly settle: string;
}

/** Before the first stake, at each stake, and how much higher bags are laid; the last empty where none are laid. */
export function stakeLead(line: SizedLine, system: UnitSystem): StakeLead {
  return {
    call: "Call 811 before the first stake.",
    mark: "Mark each stake where the rod reads top; with no level, measure the height up from the ground.",
    settle: settleWords(line, system),
  };
}

/** `Wet bags settle: finish 5 % above the mark (1 in for 1.5 ft, 1½ in for 2.4 ft).` */
function settleWords({ stations }: SizedLine, system: UnitSystem): string {
  const heightsM = stations.flatMap(({ heightM, courses }) =>
    courses && heightM ? [heightM] : [],
  );
  if (heightsM.length === 0) return "";
  heightsM.sort((a, b) => a - b);
  const examples = [heightsM[Math.floor(heightsM.length / 2)]!, heightsM.at(-1)!];
  const words = examples.map((m) => `${settlingUp(m, system)} for ${formatLength(m, system)}`);
  return `Wet bags settle: finish ${formatShare(SETTLING_SHARE)} above the mark (${[...new Set(words)].join(", ")}).`;
}

const HALF = "½";

/** Rounded up to half inches or whole centimeters, so that no bag is laid too low. */
function settlingUp(heightM: number, system: UnitSystem): string {
  const m = SETTLING_SHARE * heightM;
  if (system === "metric") return `${Math.ceil(m * 100 - 1e-6)} cm`;
  const halves = Math.ceil((2 * m) / INCH_M - 1e-6);
  const whole = Math.floor(halves / 2);
  return `${whole || ""}${halves % 2 ? HALF : ""} in`;
}

/** `1′ 10″`, to the nearest inch; metric whole centimeters. */
export function smallFigure(m: number, system: UnitSystem): string {
  if (system === "metric") return (m * 100).toFixed(0);
  const inches = Math.round(m / INCH_M);
  return `${Math.floor(inches / 12)}′ ${inches % 12}″`;
}

/** A height or a half width without its unit: `1.4` or `0.43`. */
export function heightFigure(m: number | null, system: UnitSystem): string {
  return m === null ? "" : tapeFigure(m, system);
}

/** Bags for one foot or meter of line. */
export function bagsFigure({ bagsPerM }: Station, system: UnitSystem): string {
  return bagsPerM === null ? "" : grouped(bagsPerM * lengthFrom(1, system), 0);
}

/** `7 / 9`: courses at the stake and at the low toe; one figure where they are the same. */
export function coursesFigure({ courses, coursesAtLowToe }: Station): string {
  if (courses === null) return "";
  return courses === coursesAtLowToe ? `${courses}` : `${courses} / ${coursesAtLowToe}`;
}

const NOTES: Readonly<Record<StationReason, string>> = {
  start: "start",
  end: "end",
  interval: "",
  corner: "corner",
  turn: "",
  reach: "reach",
  gap: "gap",
  highest: "highest",
  over: "",
  reading: "",
};

/** What is at a stake, in a word. */
export function stakeNote({ reason }: Station): string {
  return NOTES[reason];
}

/** Behind the ground of a stake that was read in the field, or is between two that were. */
export function groundMark({ groundFrom }: Station): string {
  return groundFrom === "reading" ? "R" : groundFrom === "between" ? "r" : "";
}

/** Which ground was read in the field, a sentence each; empty where none was. */
export function surveyedWords(
  surveyed: SurveyedGround | null | undefined,
  system: UnitSystem,
): string[] {
  if (!surveyed) return [];
  const { readings, beside = [], stretches, offLine, withoutDataM, mostApartM } = surveyed;
  const station = (m: number) => formatStation(m, system);
  const where = stretches.map(({ fromM, toM }) => {
    const { aroundM } = surveyed;
    return `${station(fromM)} to ${station(aroundM !== null && toM > aroundM ? toM - aroundM : toM)}`;
  });
  const isIn = (m: number) => stretches.some(({ fromM, toM }) => m >= fromM && m <= toM);
  const alone = readings.filter(({ chainageM }) => !isIn(chainageM));
  const aloneWords = alone.map(({ chainageM }) => station(chainageM)).join(", ");
  return [
    ...(where.length > 0
      ? [
          `Ground read in the field (R) from ${where.join(", ")}; between readings (r) up to ${formatLength(mostApartM, system, 0)} apart the difference runs in a straight line. All other ground is of the elevation data.`,
        ]
      : []),
    ...(alone.length > 0
      ? [
          `Read alone at ${aloneWords}: it changes that stake, not the bags between stakes. Read the next stakes too.`,
        ]
      : []),
    ...(withoutDataM.length > 0
      ? [`Not used at ${withoutDataM.map(station).join(", ")}: no elevation data there to adjust.`]
      : []),
    ...(offLine > 0
      ? [
          `${offLine === 1 ? "1 reading is" : `${offLine} readings are`} not used for heights: this line is not within ${system === "us" ? "2 ft" : "0.6 m"} of where ${offLine === 1 ? "it was" : "they were"} taken.`,
        ]
      : []),
    ...(beside.length > 0
      ? [
          `${beside.length === 1 ? "1 of them is" : `${beside.length} of them are`} within ${system === "us" ? "50 ft" : "15 m"} and narrows the chances of bags and heights.`,
        ]
      : []),
  ];
}

/** The same as one short line above the stakes; empty where no ground was read. */
export function surveyedBrief(
  surveyed: SurveyedGround | null | undefined,
  system: UnitSystem,
): string {
  if (!surveyed || surveyed.readings.length === 0) return "";
  const read = surveyed.readings.map(({ chainageM }) => formatStation(chainageM, system));
  const where = read.length > MOST_NAMED ? `${read.length} stakes` : read.join(", ");
  return `Ground read in the field at ${where} (R), between readings r; all other ground is of the elevation data.`;
}

/** More readings than this are counted, not named. */
const MOST_NAMED = 6;

/** What the two notes under the last stakes say. */
export function stakeRemedies(line: SizedLine, intervalM: number, system: UnitSystem) {
  const accuracy = formatLength(line.groundAccuracy.rmseM, system, system === "us" ? 1 : 2);
  const unit = lengthUnit(system);
  return [
    {
      title: "If the ground is not as written",
      text: `Rod on the ground differs by more than ${accuracy}: write it in the margin and call the office before laying bags. ${accuracy} is the accuracy of the elevation data.`,
    },
    {
      title: "If a tie does not fit",
      text: `Trust the tape between stakes (${lengthIn(intervalM, system).toFixed(1)} ${unit} along the line) and the corner stakes. Outlines come from a map and can be off by ${system === "us" ? "2 ft" : "0.6 m"}. Tape and bearing (true north): from the stake before. Lat, lon: WGS 84.`,
    },
  ] as const;
}
