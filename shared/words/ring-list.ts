import type { BandLevels } from "../buildings/band-levels.ts";
import type { FoundChoice } from "../buildings/choice-types.ts";
import type { Crew, CrewTurn } from "../buildings/crew-list.ts";
import { mustFixOf } from "../buildings/line-times.ts";
import type { BuildingRow } from "../buildings/rows.ts";
import type { ShownState } from "../buildings/shown-states.ts";
import type { CheckedLine, Priority } from "../buildings/types.ts";
import { HOUR_S } from "../constants.ts";
import type { GroundSummary } from "../messages.ts";
import type { LonLat, Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { momentOf } from "../time/forecast-time.ts";
import type { Band } from "../time/hydrograph.ts";
import {
  formatArea,
  formatCount,
  formatElevation,
  formatHours,
  formatLength,
  formatVolume,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { peopleCount } from "./buildings-answer.ts";
import { chosenWords } from "./buildings-table.ts";
import { capital } from "./capital.ts";
import { checkWords } from "./checks.ts";
import { momentWords } from "./clock.ts";
import { mustFixWords } from "./must-fix.ts";
import type { HeadCell } from "./sheet.ts";

/** Words of the printed list of the rings to build that have no figure in them. */
export const RING_LIST = {
  name: "Ring list",
  label: "Rings to build",
  back: "Back to the buildings",
  order: "Lines in order of deadline",
  noPeople: "Nobody typed how many people there are: no crews, and no hour is known.",
  notRinged: "Not ringed: warn the people there; they leave",
  notRingedNone: "Every building that floods at this stage is inside a line.",
  notFlooded:
    "Not flooded at this stage is no more than that: groundwater, rain and a higher river are not counted.",
  lowBehind: "Not reached over the ground, and lower than this water: warn the people there too",
  stock: "Stock and choice",
  cautions: [
    "Choosing which to ring is people's decision. This list is one choice with the stock typed.",
    "A levee can fail, and water then comes suddenly. Buildings not ringed still need warning, and their people leave.",
    "No one works alone; life jackets once water is at the toe; lights at night. Keep out of moving water.",
  ],
  foot: [
    "Temporary levees: they can fail without warning. Not a permit: local codes and licensed engineers decide.",
  ],
  old: ["Another number on the command-post board?", "This list is old. Do not build from it."],
  none: "No choice to print yet. Type bags and people, and wait until all buildings are checked.",
  crews:
    "Crews are a proposal: they stay together, and each builds first what must be closed first. “Begin by” is the latest hour for that crew, set up before. Build each line from its own plan and stakes.",
  heads: {
    done: "Done",
    mark: "No.",
    building: "Building and place",
    bags: "Bags to order",
    people: "People",
    start: "Begin by",
    begins: "Crew begins",
    doneBy: "Crew done",
    closed: "Close by",
    height: "Greatest height",
    depth: "Water depth",
    firstWet: "First wet",
    why: "Why not ringed",
  },
} as const;

/** `4 lines for 6 buildings, 11,733 bags to order`. */
export function ringListTitle({ chosen, buildings, bags }: FoundChoice): string {
  return `${chosenWords(chosen.length, buildings.length)}, ${formatCount(Math.round(bags))} bags to order`;
}

/** `44.97512, -93.26101`: latitude first, as it is read out over the radio. */
export function placeWords([lon, lat]: LonLat): string {
  return `${lat.toFixed(5)}, ${lon.toFixed(5)}`;
}

/** Over the lines of a crew: `Crew 1 of 2, 45 people`. */
export function crewTitle({ people }: Crew, index: number, count: number): string {
  return `Crew ${index + 1} of ${count}, ${peopleCount(people)}`;
}

/** An hour of the work: `Tue 22:30`; counted from the start where that has no clock. */
export function workHourWords(
  hours: number,
  start: { readonly atS: number; readonly offsetMin: number | null } | null,
  system: UnitSystem,
  way: "up" | "down",
): string {
  const round = way === "up" ? Math.ceil : Math.floor;
  if (!start) return `${formatHours(round(hours * 4) / 4)} in`;
  const atS = round((start.atS + hours * HOUR_S) / QUARTER_S - SLACK[way]) * QUARTER_S;
  return momentWords({ ...start, atS }, false, system);
}

const QUARTER_S = 900;
const SLACK = { up: 1e-6, down: -1e-6 } as const;

/** `LATE 1.5 h`; empty where it is in time, `not known` where nobody knows by when. */
export function lateWords({ lateH }: Pick<CrewTurn, "lateH">): string {
  if (lateH === null) return "in time? not known";
  return lateH > 1e-6 ? `LATE ${formatHours(Math.ceil(lateH * 4) / 4)}` : "";
}

/** Of the lines with something to fix: `Lines 1, 4: see the list. Do not build them before it is fixed.` */
export function faultyLines(marks: readonly (number | null)[]): string {
  const [lines, them] = marks.length === 1 ? ["Line", "it"] : ["Lines", "them"];
  return `${lines} ${marks.join(", ")}: see the list. Do not build ${them} before that is fixed.`;
}

/** What must be fixed on a line before it is built, in one line; empty where the check found nothing. */
export function lineMustFix(line: Pick<CheckedLine, "mustFix">, system: UnitSystem): string {
  const mustFix = mustFixOf(line);
  if (mustFix.length === 0) return "";
  const different = new Map(
    mustFix.map(({ id, finding }) => [JSON.stringify([id, finding]), { id, where: null, finding }]),
  );
  const what = [...different.values()].map((each) => capital(checkWords(each, system).what));
  return `${mustFixWords(mustFix.length)}: ${what.join(" ")}`;
}

/** Why a building that floods, or may, is not ringed. */
export function whyNotRinged(
  { state, failed, line }: Pick<BuildingRow, "state" | "failed" | "line">,
  { priority, isOff }: { readonly priority: Priority; readonly isOff: boolean },
  system: UnitSystem,
): string {
  if (failed !== null) return `could not be checked (${failed}): treat it as flooded`;
  if (isOff) return "tick taken away by hand";
  if (priority === "never" && state !== "no-data") return "marked Never";
  return WHY[state](line && formatLength(line.lengthOverLimitM, system, 0));
}

const WHY: Readonly<Record<ShownState, (over: string | null) => string>> = {
  chosen: () => "",
  "can-be-ringed": () => "stock does not reach",
  "over-limit": (over) => `over the height limit${over ? ` for ${over}` : ""}: ask an engineer`,
  "no-room": () => "no room for a ring",
  "too-late": () => "cannot be closed in time with these people",
  "no-data": () => "no elevation data: not known, treat it as flooded",
  dry: () => "",
};

/** What of the list is in the table only in part. */
export function moreNotRinged(count: number): string {
  return `${formatCount(count)} more are not ringed: they are in the CSV file.`;
}

interface ListHead {
  readonly plan: Plan;
  readonly number: string;
  readonly printed: string;
  readonly bands: BandLevels | null;
  readonly bags: number | null;
  readonly people: number | null;
  readonly system: UnitSystem;
}

/** The cells on top of each page: number, water, forecast and its time, stock. */
export function ringListCells(head: ListHead): readonly HeadCell[] {
  const { plan, number, printed, bags, people, system } = head;
  const { water, gauge } = plan;
  const byStage = water.by === "stage";
  return [
    { name: "List number", value: number, note: `printed ${printed}` },
    {
      name: byStage ? "Sized for stage" : "Sized for water at",
      value: byStage
        ? formatLength(water.stageM, system)
        : formatElevation(water.elevationM, system),
      note: byStage ? gauge?.name || "gauge not named" : "given as an elevation",
    },
    forecastCell(head),
    {
      name: "Stock",
      value: bags === null ? "bags not typed" : `${formatCount(bags)} bags`,
      note: people === null ? "people not typed" : `${formatCount(people)} people`,
    },
  ];
}

function forecastCell({ plan, bands, system }: ListHead) {
  const { water, time } = plan;
  const rows = time?.forecast?.rows ?? [];
  const highest = rows.reduce<(typeof rows)[number] | null>(
    (best, row) => (best && best.levelM >= row.levelM ? best : row),
    null,
  );
  if (!highest) return { name: "Forecast crest", value: "none entered", note: "no time is known" };
  const zeroM = water.by === "stage" ? waterElevationAtGauge(water) - water.stageM : 0;
  const level = (band: Band) => bands && formatLength(bands[band] - zeroM, system);
  const { note } = time!.forecast!;
  return {
    name: note ? `Forecast crest. ${note}` : "Forecast crest",
    value: `${formatLength(highest.levelM, system)}, ${momentWords(momentOf(highest.at)!, true, system)}`,
    note: bands ? `low ${level("low")}, high ${level("high")}` : "no spread given",
  };
}

/** What elevations count from, and how good they are. */
export function ringListNotes(
  verticalDatum: string,
  ground: Pick<GroundSummary, "name" | "cellXM" | "cellYM"> | null,
  rmseM: number,
  system: UnitSystem,
): string {
  const cells = ground
    ? `${ground.name}, cells of ${formatLength(Math.max(ground.cellXM, ground.cellYM), system)}`
    : "not open";
  return `Datum: ${verticalDatum}. Elevation data: ${cells}, ±${formatLength(rmseM, system, 2)} (RMSE).`;
}

/** What the chosen lines take of the stock: a sentence for each thing. */
export function stockLines(
  { bags, sandM3, sheetM2, personHours, peopleNeeded }: FoundChoice,
  stock: { readonly bags: number | null; readonly sandM3: number | null },
  system: UnitSystem,
): readonly string[] {
  const of = (there: string | null) => (there === null ? "" : ` of ${there}`);
  return [
    `Bags to order: ${formatCount(Math.round(bags))}${of(stock.bags === null ? null : formatCount(stock.bags))}, spares and those on the poly sheeting among them.`,
    `Sand: ${formatVolume(sandM3, system)}${of(stock.sandM3 === null ? null : formatVolume(stock.sandM3, system))}. Poly sheeting: ${formatArea(sheetM2, system)}.`,
    `Work: ${formatCount(Math.round(personHours))} person-hours${peopleNeeded === null ? "" : `; at least ${formatCount(peopleNeeded)} people`}.`,
  ];
}

/** Heads of columns whose figures have a unit. */
export function heightHead(system: UnitSystem): string {
  return `${RING_LIST.heads.height}, ${lengthUnit(system)}`;
}

export function depthHead(system: UnitSystem): string {
  return `${RING_LIST.heads.depth}, ${lengthUnit(system)}`;
}
