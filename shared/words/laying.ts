import { FOOT_M, INCH_M } from "../constants.ts";
import type { Plan } from "../plan.ts";
import {
  formatLength,
  formatStation,
  grouped,
  lengthIn,
  shownLengthM,
  type UnitSystem,
} from "../units.ts";
import { unitsOf } from "./units.ts";

/** A stretch of a line, metres of chainage. */
interface Stretch {
  readonly fromM: number;
  readonly toM: number;
}

/** How bags are laid: a step, what its drawing says, and where it comes from. */
export interface LayingStep {
  readonly id: "fill" | "first" | "stagger" | "poly" | "trench";
  readonly title: string;
  readonly text: string;
  /** Words on the drawing. */
  readonly marks: readonly string[];
}

/** Higher than this the sod is stripped and a bond trench is dug, metres. Source: NDSU-11, NDSU-97. */
export const TRENCH_OVER_M = 3 * FOOT_M;

/** The most stretches that are named one by one. */
const MOST_NAMED = 4;

/** `0+00 to 3+69 and 7+39 to 8+60`; of many the first, and how many more. */
export function stretchesWords(stretches: readonly Stretch[], system: UnitSystem): string {
  const named = stretches
    .slice(0, stretches.length > MOST_NAMED ? MOST_NAMED - 1 : MOST_NAMED)
    .map(
      ({ fromM, toM }) => `${formatStation(fromM, system, 0)} to ${formatStation(toM, system, 0)}`,
    );
  const more = stretches.length - named.length;
  if (more > 0) return `${named.join(", ")} and ${more} more stretches`;
  return named.length < 2 ? named.join("") : `${named.slice(0, -1).join(", ")} and ${named.at(-1)}`;
}

/** The steps of laying, in their order, from published sources. */
export function layingSteps(
  { section }: Plan,
  trench: readonly Stretch[],
  system: UnitSystem,
): readonly LayingStep[] {
  const u = unitsOf(system);
  const { bag, sheet } = section;
  const where =
    trench.length === 0
      ? `No stretch of this line is over ${u.figure(TRENCH_OVER_M)}.`
      : `Here ${stretchesWords(trench, system)}.`;
  return [
    {
      id: "fill",
      title: "Fill",
      text: `A little over half full: ${u.mass(bag.filledMassKg)} a bag. One keeps it open, one shovels. Pass bags on, never throw.`,
      marks: ["closed end", "open end, empty"],
    },
    {
      id: "first",
      title: "First course: with the river",
      text: "Lengthwise, closed end upstream, open end downstream. Lap the next bag's full part over the open end.",
      marks: ["river flows"],
    },
    {
      id: "stagger",
      title: "Stagger, press down",
      text: "Next course crosswise. Lap at least 1/3, joints 1/2 bag apart. Walk on every course.",
      marks: ["crosswise", "lengthwise"],
    },
    {
      id: "poly",
      title: `Poly sheeting, ${system === "us" ? "6 mil" : "0.15 mm"} or more`,
      text: `Never under the bags. ${u.figure(sheet.toeExtensionM)} past the water-side toe, on ${u.small(INCH_M)} of loose soil. A row of bags, no gaps, on each edge. Lay it very loose. Stay off it.`,
      marks: [
        "upstream on top",
        "downstream, laid first",
        `lap ${u.figure(sheet.lapM)}`,
        "river flows",
      ],
    },
    {
      id: "trench",
      title: `Over ${u.figure(TRENCH_OVER_M)}: strip sod, bond trench`,
      text: `${where} Strip the sod under the base, dig along its middle, fill with bags. Call 811 before you dig.`,
      marks: [
        u.smallRange(18 * INCH_M, 24 * INCH_M),
        `${u.smallRange(4 * INCH_M, 6 * INCH_M)} deep`,
        "middle of the base",
      ],
    },
  ];
}

/** In the place of cross-sections that could not be cut. */
export const SECTIONS_FAILED =
  "The cross-sections could not be drawn: the elevation data could not be read. Open it again, then print.";

/** Where the steps come from. */
export const LAYING_SOURCES =
  "Laying, poly sheeting, trench: NDSU-11. Crosswise, lap 1/3: DWR-03. Sod: NDSU-97. Weight: EFT-94. Bags on the top edge, 811: common practice.";

/** `Cross-sections 1 in = 4 ft`. */
export function sectionScaleWords(scale: string): string {
  return `Cross-sections ${scale}, water side on the left.`;
}

/** What a cross-section is of: its heading, and what is said beside it. */
export function groupWords(
  group: {
    readonly kind: "typical" | "highest" | "type";
    readonly stretches: readonly Stretch[];
    readonly lengthM: number;
    readonly lowM: number;
    readonly highM: number;
    readonly chainageM: number;
    readonly isOver: boolean;
  },
  system: UnitSystem,
): { readonly where: string; readonly range: string | null } {
  const at = formatStation(group.chainageM, system, 0);
  const high =
    shownLengthM(group.lowM, system) === shownLengthM(group.highM, system)
      ? `${formatLength(group.highM, system)} high`
      : `${grouped(lengthIn(group.lowM, system), system === "us" ? 1 : 2)}–${formatLength(group.highM, system)} high`;
  const length = formatLength(group.lengthM, system, 0);
  if (group.kind === "highest") {
    const where =
      group.stretches.length > 0 ? `${stretchesWords(group.stretches, system)}, ${length}; ` : "";
    return {
      where: `${where}here ${at}`,
      range: group.isOver ? null : "the highest place of the line",
    };
  }
  return {
    where: stretchesWords(group.stretches, system),
    range: `${length}, ${high}; cut at ${at}`,
  };
}

/** `7 courses at stake, 9 at toe, 26 bags/ft`. */
export function countWords(
  counts: { readonly stake: number | null; readonly toe: number; readonly bagsPerM: number | null },
  system: UnitSystem,
): string {
  const { stake, toe, bagsPerM } = counts;
  if (stake === null) return "not of bags";
  const courses = stake === toe ? `${stake} courses` : `${stake} courses at stake, ${toe} at toe`;
  const per = system === "us" ? FOOT_M : 1;
  const bags =
    bagsPerM === null ? "" : `, ${Math.round(bagsPerM * per)} bags/${system === "us" ? "ft" : "m"}`;
  return `${courses}${bags}`;
}

export const OVER_DO_NOT_BUILD = "OVER THE LIMIT: DO NOT BUILD";

/** Which way the open ends of the first course point on a leg of the line. */
export interface LegFlow extends Stretch {
  /** With the chainage, against it, or across the river. */
  readonly open: "onward" | "back" | "across";
}

/** `0+00 to 2+62 toward 2+62`. */
export function legWords({ fromM, toM, open }: LegFlow, system: UnitSystem): string {
  const [from, to] = [formatStation(fromM, system, 0), formatStation(toM, system, 0)];
  if (open === "across") return `${from} to ${to} across the flow`;
  return `${from} to ${to} toward ${open === "onward" ? to : from}`;
}

/** Which way open ends point, for a crew that reads the ground by stations. */
export const LEGS_TITLE = "Open ends, by the flow drawn on the plan:";
export const NO_FLOW =
  "The river's flow is not drawn on the plan: ask which way is downstream before the first bag.";
