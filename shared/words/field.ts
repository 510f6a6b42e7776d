import { type LowPlace, volumeBetweenM3 } from "../field/at-stake.ts";
import { feetAndInchesUp, heightUp, roundedUp } from "../field/rounded-up.ts";
import type { StakedStretch } from "../field/stakes.ts";
import { letterOfLine } from "../line-letter.ts";
import type { Plan } from "../plan.ts";
import { bagsPlacedFor } from "../quantities.ts";
import { reachAt } from "../reaches.ts";
import { bagTopM } from "../settling.ts";
import type { Check, SizedLine, Station } from "../sizing-types.ts";
import { rodReading, shownInstrument } from "../survey/rod.ts";
import {
  formatCount,
  formatElevation,
  formatStation,
  lengthFrom,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { baseWidths } from "./base-width.ts";
import { checkWords } from "./checks.ts";
import { courseWords } from "./courses.ts";
import { heightUpWords } from "./height-up.ts";
import { inSentence, leveeTypeName } from "./levee-types.ts";
import { unitsOf } from "./units.ts";
import { whereWords } from "./where.ts";

/** `4 ft 5 in`, rounded up to the inch; in metric `134 cm`. */
export function heightInStepsWords(m: number, system: UnitSystem): string {
  if (system === "metric") return `${Math.round(100 * heightUp(m, "metric"))} cm`;
  const { feet, inches } = feetAndInchesUp(m);
  return `${feet} ft ${inches} in`;
}

/** Where the height counts from: `at the low toe, river side`. */
export function lowPlaceWords(place: LowPlace): string {
  return LOW_PLACES[place];
}

const LOW_PLACES: Readonly<Record<LowPlace, string>> = {
  level: "at the stake and both toes",
  center: "at the low place by the stake",
  "water-toe": "at the low toe, river side",
  "land-toe": "at the low toe, land side",
};

/** One figure of the levee at a stake, with what it is and a line or two beside it. */
export interface FieldFact {
  readonly name: string;
  readonly value: string;
  readonly notes: readonly string[];
}

interface FactsAt {
  readonly line: Pick<SizedLine, "walk" | "reaches" | "levelDoubt">;
  readonly station: Station;
  readonly stretch: StakedStretch | null;
  readonly plan: Plan;
  readonly system: UnitSystem;
}

/** Courses, base, top of levee and bags at a stake, in this order; of what is not built or no answer, no figures. */
export function fieldFacts(at: FactsAt): readonly FieldFact[] {
  if (at.line.levelDoubt?.countsUnknown) return [];
  if (at.station.greatestHeightM !== null && at.station.greatestHeightM <= 0) return [topFact(at)];
  return [coursesFact(at), baseFact(at), topFact(at), bagsFact(at)];
}

function coursesFact({ line, station }: FactsAt): FieldFact {
  const name = "Courses";
  const { courses, coursesAtLowToe, chainageM, greatestHeightM } = station;
  if (greatestHeightM === null) return { name, value: "–", notes: ["no elevation data"] };
  if (coursesAtLowToe === null) {
    return {
      name,
      value: "–",
      notes: [inSentence(leveeTypeName(reachAt(line, chainageM).section))],
    };
  }
  const note = courses === coursesAtLowToe ? "offset the joints" : `${courses} at the stake`;
  return { name, value: formatCount(coursesAtLowToe), notes: [note] };
}

function baseFact({ station, system }: FactsAt): FieldFact {
  const name = "Base";
  const { toeWatersideM, toeLandsideM } = station;
  if (toeWatersideM === null || toeLandsideM === null) {
    return { name, value: "–", notes: ["no elevation data"] };
  }
  const toes = { waterM: toeWatersideM, landM: toeLandsideM };
  const { water, land, inUnit } = baseWidths(toes, system);
  return {
    name,
    value: inUnit,
    notes: [water === land ? "half on each side" : `${water} river, ${land} land`],
  };
}

function topFact({ station, plan, system }: FactsAt): FieldFact {
  const { crestM, groundM, heightM } = station;
  const bagsM = bagTopM(station);
  const up =
    heightM === null || heightM <= 0 ? [] : [`${heightUpWords(heightM, system)} up the stake`];
  const bags =
    bagsM === null || groundM === null
      ? []
      : [`lay bags to ${heightUpWords(bagsM - groundM, system)}`];
  return {
    name: "Top of levee",
    value: formatElevation(crestM, system),
    notes: [...up, ...bags, ...rodNotes(plan, crestM, system)],
  };
}

/** The rod reading at which the top of levee is marked; nothing before the level is set up. */
function rodNotes(plan: Plan, crestM: number, system: UnitSystem): readonly string[] {
  const instrument = shownInstrument(plan, system);
  if (instrument === null) return [];
  const reading = rodReading(instrument, crestM, system);
  return [reading < 0 ? "above the line of sight" : `rod ${reading.toFixed(2)} at the mark`];
}

function bagsFact({ line, station, stretch, plan, system }: FactsAt): FieldFact {
  const name = "Bags";
  const { bagsPerM } = station;
  if (bagsPerM === null) return { name, value: "–", notes: ["no elevation data"] };
  const perUnit = formatCount(Math.ceil(bagsPerM * lengthFrom(1, system)));
  const volumeM3 = stretch && volumeBetweenM3(line, stretch);
  const value = `${perUnit} per ${lengthUnit(system)}`;
  if (bagsPerM === 0 || stretch === null || volumeM3 === null) return { name, value, notes: [] };
  const bags = roundedUp(bagsPlacedFor(volumeM3, plan.section) / 10, 0) * 10;
  return {
    name,
    value,
    notes: [`about ${formatCount(bags)} to ${formatStation(stretch.toM, system)}`],
  };
}

/** Height and courses at the low toe, over a cross-section: `4.4 ft, 14 courses`. */
export function sectionHeadWords(
  { greatestHeightM, coursesAtLowToe }: Pick<Station, "greatestHeightM" | "coursesAtLowToe">,
  system: UnitSystem,
): string {
  if (greatestHeightM === null) return "no elevation data";
  const height = heightUpWords(greatestHeightM, system);
  return coursesAtLowToe === null ? height : `${height}, ${courseWords(coursesAtLowToe)}`;
}

/** What must be fixed at a stake, as those who build read it. */
export function mustFixAtStakeWords(
  mustFix: readonly Check[],
  isOverLimit: boolean,
  system: UnitSystem,
): readonly string[] {
  const said = mustFix.map((check) => mustFixWordsOf(check, system));
  const isSaid = mustFix.some(({ finding }) => finding.kind === "over-limit");
  return isOverLimit && !isSaid ? [...said, OVER_LIMIT] : said;
}

export const MUST_FIX_TITLE = "Must fix: do not build here yet";
const ASK = "Ask the plan lead.";
const WHO_DECIDES = "The line must move to higher ground, or a licensed engineer decides.";
const OVER_LIMIT = `Over the height limit between here and the next stake. ${ASK} ${WHO_DECIDES}`;

function mustFixWordsOf({ id, where, finding }: Check, system: UnitSystem): string {
  if (finding.kind === "over-limit" && where !== null) {
    const units = unitsOf(system);
    return `${whereWords(where, units)} is over the ${units.length(finding.limitM)} height limit. ${ASK} ${WHO_DECIDES}`;
  }
  return `${checkWords({ id, where, finding }, system).message} ${ASK}`;
}

/** The cautions at a stake, in full. */
export function cautionsAtStakeWords(
  cautions: readonly Check[],
  system: UnitSystem,
): readonly string[] {
  return cautions.map((check) => {
    const { message, remedy } = checkWords(check, system);
    return `${message} ${remedy}`;
  });
}

export const NO_WARNING =
  "No Must fix found at this stake; it can still fail. Lap the bags, tamp every course.";

/** `Line A, Drawn ring`. */
export function lineCommaWords(plan: Plan, { id, name }: Pick<SizedLine, "id" | "name">): string {
  return `Line ${letterOfLine(plan, id)}, ${name}`;
}

/** `Stake 22 of 43`. */
export function stakeCountWords(index: number, count: number): string {
  return `Stake ${index + 1} of ${count}`;
}

/** In the place of the height where there is none, and why; null where it is known. */
export function noHeightWords(
  { levelDoubt }: Pick<SizedLine, "levelDoubt">,
  { greatestHeightM }: Pick<Station, "greatestHeightM">,
): string | null {
  if (levelDoubt?.countsUnknown)
    return "The height is not known: water and ground of this plan do not belong together. Build nothing. Ask the plan lead.";
  if (greatestHeightM === null)
    return "No elevation data here: the height is not known. Ask the plan lead.";
  return greatestHeightM > 0
    ? null
    : "Nothing to build: the ground is above the top of levee here.";
}
