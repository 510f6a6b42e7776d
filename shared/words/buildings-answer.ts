import type { FoundChoice, MoreBuys, MustDoNeeds, MustDoWhy } from "../buildings/choice-types.ts";
import type { RunsOut } from "../buildings/types.ts";
import {
  formatCount,
  formatHours,
  formatVolume,
  grouped,
  type UnitSystem,
  volumeIn,
  volumeUnit,
} from "../units.ts";
import { listed } from "./list.ts";

/** Words of the view of all buildings that have no figure in them. */
export const BUILDINGS = {
  name: "All buildings",
  question: "Which buildings should be ringed?",
  checking: "Still checking",
  stopped: "Stopped",
  stop: "Stop",
  goOn: "Check the rest",
  later: "The choice comes when all are checked. What is checked stays if you stop.",
  choosing: "Choosing",
  stock: "Stock",
  more: "What more would buy",
  stage: "Sized-for stage",
  elevation: "Sized-for water elevation",
  typeStock: "Type bags and people to choose.",
  onePlan: "One building",
  importTitle: "Import building footprints",
  importFirst: "Import building footprints to see which of them flood and which can be ringed.",
  importLead:
    "GeoJSON, KML, a zipped shapefile, FlatGeobuf, or GeoParquet, in longitude and latitude, in any grid that the file states, or in the grid of the elevation data.",
  importAgain: "Import other footprints",
  columns: "Columns of the file",
  idFrom: "Id from",
  ownIds: "the file's own ids, else row numbers",
  nameFrom: "Name from",
  floorFrom: "Floor from",
  floorsIn: "Floors are in",
  priorityFrom: "Priority from",
  noColumn: "no column",
  chooseUnit: "choose the unit",
  people: "Choosing which to ring is people's decision.",
  engineers: "Local codes and licensed engineers decide.",
  caution: "Caution.",
  fail: "A levee can fail, and water then comes suddenly. Buildings not ringed still need warning, and their people leave.",
  curve: "Buildings ringed against bags",
  curveLater: "Drawn when all are checked",
  curveNone: "Nothing to draw: no building can be ringed",
  curveNoStock: "Drawn when bags or people are typed",
  clearHand: "Clear what is set by hand",
  bags: "Bags",
  sand: "Sand",
  peopleLabel: "People",
  time: "Time",
  ringFirst: "Ring first",
  noneFirst: "none marked First",
  notTyped: "not typed",
  importFile: "Footprints of all buildings",
  priorityHint:
    "First and Never in that column are taken; a number above 0 up to 1,000 is what the building counts.",
  mapView: "Map view",
  zoomIn: "Zoom in",
  zoomOut: "Zoom out",
  lookAtAll: "All",
  height: "Levee height",
  byOwnWater: "Each line by its own first water, not all by the first",
  mustDoRemedy: "Get what is missing, or take the mark off.",
  work: "How people work",
  atWork: "At work at a time",
  setUp: "Set-up",
  closeBefore: "Closed before the first water",
  move: "Moving to each next line, person-hours",
  mostOnOne: "Most people on one line",
} as const;

/** `county.fgb, 3 notes`. */
export function fileWords(name: string, notes: number): string {
  if (notes === 0) return name;
  return `${name}, ${notes === 1 ? "1 note" : `${formatCount(notes)} notes`}`;
}

/** `Teasel Ferry, 400 buildings`. */
export function listWords(title: string, count: number | null): string {
  if (count === null) return title;
  return `${title}, ${count === 1 ? "1 building" : `${formatCount(count)} buildings`}`;
}

/** The answer: how many of the buildings that flood are ringed. */
export function ringedOf(ringed: number, flooded: number): string {
  return `${formatCount(ringed)} of ${formatCount(flooded)}`;
}

export function floodedWords(flooded: number): readonly [string, string] {
  return flooded === 1 ? ["flooded", "building"] : ["flooded", "buildings"];
}

/** What a choice is made with. */
export interface WithWords {
  readonly bags: number | null;
  readonly people: number | null;
  /** When all must be closed, in words; null where it is not known. */
  readonly by: string | null;
}

/** `can be ringed by Thu 06:00 with 120,000 bags and 180 people.` in its parts, those in bold apart. */
export function withWords({ bags, people, by }: WithWords): {
  readonly by: string | null;
  readonly rest: string;
} {
  const parts = [
    ...(bags === null ? [] : [`${formatCount(bags)} bags`]),
    ...(people === null ? [] : [peopleCount(people)]),
  ];
  return { by, rest: parts.length === 0 ? "." : ` with ${listed(parts)}.` };
}

/** `60 people`; one is a person. */
export function peopleCount(people: number): string {
  return people === 1 ? "1 person" : `${formatCount(people)} people`;
}

/** `Proved: no better choice with this stock.` or how far it may be from the best. */
export function proofWords({ isProved, bestPossible, weight }: FoundChoice): string {
  if (isProved) return "Proved: no better choice with this stock, of these lines.";
  const off = Math.max(0, bestPossible - weight);
  const by = Number.isInteger(off) ? formatCount(off) : grouped(off, 1);
  return `Not proved: within ${by} of the best with this stock.`;
}

/** That hours were not counted for some chosen lines; null where they were for all. */
export function notTimedWords({ notTimed, chosen }: FoundChoice): string | null {
  if (notTimed.length === 0) return null;
  const of =
    notTimed.length === chosen.length ? "any line" : `${formatCount(notTimed.length)} of the lines`;
  return `Not known whether ${of} can be closed in time: type people and hours.`;
}

/** That crews that stay together are late with some chosen lines; null where they are with none. */
export function crewsLateWords(late: number): string | null {
  if (late === 0) return null;
  const [lines, they] =
    late === 1 ? ["1 line", "it is"] : [`${formatCount(late)} lines`, "they are"];
  return `Crews that stay together close ${lines} too late: ${they} marked LATE in the printed list. Move people between lines as they are needed, or put fewer lines on.`;
}

const OUT: Readonly<Record<RunsOut, string>> = {
  bags: "bags run out first",
  sand: "sand runs out first",
  sheet: "poly sheeting runs out first",
  people: "people run out first",
  time: "time runs out first",
  nothing: "nothing runs out",
};

export function runsOutWords(first: RunsOut): string {
  return OUT[first];
}

const NAMES: Readonly<Record<RunsOut, string>> = {
  bags: "bags",
  sand: "sand",
  sheet: "sheeting",
  people: "people",
  time: "time",
  nothing: "nothing",
};

/** The same as a cell of a table. */
export function runsOutName(first: RunsOut): string {
  return NAMES[first];
}

const SHORT: Readonly<Record<RunsOut, string>> = {
  bags: "bags are short",
  sand: "sand is short",
  sheet: "poly sheeting is short",
  people: "people are short",
  time: "time is short",
  nothing: "no more can be ringed",
};

/** `10,000 more bags`, `40 people, 100 cu yd`. */
export function moreWords({ more }: Pick<MoreBuys, "more">, system: UnitSystem): string {
  const parts = [
    ...(more.bags ? [`${formatCount(more.bags)} bags`] : []),
    ...(more.people ? [`${formatCount(more.people)} people`] : []),
    ...(more.sandM3 ? [`${wholeVolume(more.sandM3, system)} sand`] : []),
    ...(more.sheetM2 ? ["poly sheeting"] : []),
    ...(more.hours ? [more.hours === 1 ? "1 hour" : `${grouped(more.hours, 0)} hours`] : []),
  ];
  return `${listed(parts)} more`;
}

/** `1 building`, or why nothing. */
export function buysWords({ buildings, mustDo, runsOutFirst }: MoreBuys): string {
  if (mustDo > 0) return mustDo === 1 ? "1 marked First" : `${formatCount(mustDo)} marked First`;
  if (buildings > 0) return buildings === 1 ? "1 building" : `${formatCount(buildings)} buildings`;
  return runsOutFirst === null ? "nothing" : `nothing: ${SHORT[runsOutFirst]}`;
}

function wholeVolume(m3: number, system: UnitSystem): string {
  return `${formatCount(Math.round(volumeIn(m3, system)))} ${volumeUnit(system)}`;
}

/** Under a bar of the stock: `54,297 to order, 65,703 left over`: those on the poly sheeting are among them. */
export function usedBags(used: number, of: number): string {
  return leftWords(Math.round(used), Math.round(of), "to order");
}

/** The same of sand, in the unit that the field beside it has. */
export function usedSand(usedM3: number, ofM3: number, system: UnitSystem): string {
  const [used, of] = [usedM3, ofM3].map((m3) => Math.round(volumeIn(m3, system)));
  return leftWords(used!, of!, "used");
}

function leftWords(used: number, of: number, how: string): string {
  const left = of - used;
  return left >= 0
    ? `${formatCount(used)} ${how}, ${formatCount(left)} left over`
    : `${formatCount(used)} ${how}, ${formatCount(-left)} too few`;
}

/** `2,858 of 2,880 person-hours: 90 × 32 h`: so many at work at a time, for so long. */
export function usedHours(
  used: number,
  { available, atWork, hours }: { available: number; atWork: number; hours: number },
): string {
  const sum = `${formatCount(Math.round(used))} of ${formatCount(Math.round(available))} person-hours`;
  return `${sum}: ${formatCount(Math.round(atWork))} × ${formatHours(hours)}`;
}

/** Where each line has its own hour: `2,358 person-hours, at least 165 people`. */
export function neededPeople({
  personHours,
  peopleNeeded,
}: Pick<FoundChoice, "personHours" | "peopleNeeded">): string {
  const hours = `${formatCount(Math.round(personHours))} person-hours`;
  return peopleNeeded === null ? hours : `${hours}, at least ${formatCount(peopleNeeded)} people`;
}

/** Where the stock has no people and the plan has: `60 at work, as typed in the plan`. */
export function planPeopleWords(people: number): string {
  return `${formatCount(people)} at work, as typed in the plan`;
}

/** `until the first water, Thu 06:00`; what to type where that is not known. */
export function untilWords(at: string | null): string {
  return at === null ? "hours until the first water" : `until the first water, ${at}`;
}

/** `213 of 400 buildings checked.` in its figure and the rest. */
export function checkedWords(done: number, total: number): readonly [string, string] {
  return [`${formatCount(done)} of ${formatCount(total)}`, "buildings checked."];
}

/** Once all are checked alone: `Looking for one ring around neighbors: 3 found so far.` */
export function groupsWords(found: number): string {
  return `Looking for one ring around neighbors: ${formatCount(found)} found so far.`;
}

/** `About 40 seconds left.`; nothing before enough of them are checked to say. */
export function leftTimeWords(seconds: number | null): string {
  if (seconds === null) return "";
  if (seconds < 2) return "Almost done.";
  if (seconds < 100)
    return `About ${formatCount(roundTo(seconds, seconds < 20 ? 1 : 5))} seconds left.`;
  return `About ${formatCount(Math.ceil(seconds / 60))} minutes left.`;
}

function roundTo(value: number, step: number): number {
  return Math.max(step, Math.round(value / step) * step);
}

/** Without stock: `26 of 37 flooded buildings can be ringed.` */
export function canBeRingedWords(ringable: number, flooded: number): string {
  const of = `${formatCount(ringable)} of ${formatCount(flooded)} flooded buildings`;
  return `${of} can be ringed under the height limit.`;
}

/** Under the slider: what a band of the forecast is. */
export const BAND_NAMES = { low: "Low", likely: "Likely", high: "High" } as const;

/** Under a band: how many buildings flood at its crest. */
export function floodWords(buildings: number): string {
  return buildings === 1 ? "1 floods" : `${formatCount(buildings)} flood`;
}

const WHY_NOT: Readonly<Record<MustDoWhy, string>> = {
  "no-line": "no line for it can be built",
  "must-not": "it is marked Never, or its tick was taken away",
  "too-late": "its line cannot be closed in time",
  "not-enough": "there is not enough for it",
};

/** `Cold store must be ringed and is not: there is not enough for it.` */
export function mustDoWords(name: string, why: MustDoWhy): string {
  return `${name} is marked to be ringed and is not: ${WHY_NOT[why]}.`;
}

/** What all that must be ringed takes, and what of it is missing. */
export function needsWords({ takes, missing }: MustDoNeeds, system: UnitSystem): string {
  const parts = [
    ...(missing.bags > 0 ? [`${formatCount(Math.ceil(missing.bags))} bags`] : []),
    ...(missing.sandM3 > 0 ? [`${formatVolume(missing.sandM3, system)} of sand`] : []),
    ...(missing.people > 0 ? [`${formatCount(Math.ceil(missing.people))} people`] : []),
  ];
  const all = `All that are marked take ${formatCount(takes.bags)} bags to order and ${formatCount(Math.round(takes.personHours))} person-hours`;
  return parts.length === 0 ? `${all}.` : `${all}: ${listed(parts)} more.`;
}
