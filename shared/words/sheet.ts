import type { Exported } from "../exports/exported.ts";
import { longestCellM } from "../ground-accuracy.ts";
import { letterOfLine } from "../line-letter.ts";
import type { GroundSummary } from "../messages.ts";
import type { Plan } from "../plan.ts";
import { SETTLING_SHARE } from "../settling.ts";
import type { SizedLine } from "../sizing-types.ts";
import { momentOf } from "../time/forecast-time.ts";
import {
  formatElevation,
  formatLength,
  formatShare,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { momentWords } from "./clock.ts";
import { LEAVE_NOT_SET, leaveLevelWords } from "./leave.ts";
import { mostSettlingFigure } from "./settling.ts";
import { correctedWords } from "./survey.ts";

/** One cell on top of a page: a name, what is read from afar, and what belongs to it. */
export interface HeadCell {
  readonly name: string;
  readonly value: string;
  readonly note: string;
}

/** What the head of a page is made of. */
interface Headed {
  readonly of: Exported;
  readonly ground: GroundSummary | null;
  /** The plan's number. */
  readonly number: string;
  /** When it was printed, in words. */
  readonly printed: string;
}

/** `Line A, Drawn ring: sandbag pyramid, 860 ft`. */
export function lineBuiltWords(
  plan: Plan,
  { id, name, reaches, totals }: SizedLine,
  system: UnitSystem,
): string {
  const types = [...new Set(reaches.map(({ sectionName }) => sectionName))];
  const type = types.length === 1 ? types[0]!.toLowerCase() : `${types.length} levee types`;
  return `Line ${letterOfLine(plan, id)}, ${name}: ${type}, ${formatLength(totals.lengthM, system, 0)}`;
}

/** The plan's number, the water it is for, the forecast, the top of levee. */
export function headCells({ of, number, printed }: Headed): readonly HeadCell[] {
  return [
    { name: "Plan number", value: number, note: `printed ${printed}` },
    waterCell(of),
    forecastCell(of),
    topCell(of),
  ];
}

function waterCell({ plan: { water, gauge }, system }: Exported): HeadCell {
  if (water.by === "elevation") {
    return {
      name: "Sized for water at",
      value: formatElevation(water.elevationM, system),
      note: "given as an elevation",
    };
  }
  return {
    name: "Sized for stage",
    value: stageWords(water.stageM, system),
    note: gauge?.name || "gauge not named",
  };
}

/** `31.0 ft`, with a second decimal only where it has one. */
function stageWords(m: number, system: UnitSystem): string {
  const hundredths = Math.round(lengthIn(m, system) * 100);
  return formatLength(m, system, system === "us" && hundredths % 10 === 0 ? 1 : 2);
}

function forecastCell({ plan, line: { time }, system }: Exported): HeadCell {
  const name = "Forecast crest";
  const [likely, low, high] = (["likely", "low", "high"] as const).map((band) =>
    time?.crests.find((crest) => crest.band === band),
  );
  if (!likely) return { name, value: "none entered", note: "no time is known" };
  const level = (crest: typeof likely) => stageWords(crest.stageM ?? crest.waterM, system);
  const { note } = plan.time?.forecast ?? { note: "" };
  const spread = low && high ? `low ${level(low)}, high ${level(high)}` : "no spread given";
  return {
    name: note ? `${name}. ${note}` : name,
    value: `${level(likely)}, ${momentWords(momentOf(likely.at)!, true, system)}`,
    note: spread,
  };
}

function topCell({ line, system }: Exported): HeadCell {
  const tops = line.stations.map(({ crestM }) => lengthIn(crestM, system));
  const [low, high] = [Math.min(...tops).toFixed(2), Math.max(...tops).toFixed(2)];
  const settling = mostSettlingFigure(line, 0, line.totals.lengthM, system);
  const unit = lengthUnit(system);
  return {
    name: "Top of levee",
    value: `${low === high ? low : `${low}–${high}`} ${unit}`,
    note:
      settling === null
        ? "no bags laid"
        : `lay ${formatShare(SETTLING_SHARE)} higher, up to ${settling} ${unit}`,
  };
}

/** `Apr 6, 16:40`, metric `6 Apr, 16:40`, on the clock of the machine. */
export function printedWords(now: Date, system: UnitSystem): string {
  return now.toLocaleString(system === "us" ? "en-US" : "en-GB", {
    ...{ month: "short", day: "numeric", hour: "2-digit", minute: "2-digit" },
    hourCycle: "h23",
  });
}

/** What elevations count from, and how good they are. */
export function headNotes({ of: { plan, line, verticalDatum, system }, ground }: Headed): string {
  const cells = ground
    ? `${ground.name}, cells of ${formatLength(longestCellM(ground), system)}`
    : "not open";
  return [
    `Datum: ${verticalDatum}.`,
    `Elevation data: ${cells}, ±${formatLength(line.groundAccuracy.rmseM, system, 2)} (RMSE).`,
    correctedWords(plan.ground.correctionM, system),
  ]
    .filter(Boolean)
    .join(" ");
}

/** `Stakes 0+00 to 4+38 · page 1 of 2`; the name alone where there is one page. */
export function pageWords(name: string, page: number, of: number): string {
  return of === 1 ? name : `${name} · page ${page} of ${of}`;
}

/** What stands at the foot of every page, left and right. */
export function footWords(
  { leave }: Pick<Plan, "leave">,
  system: UnitSystem,
  forCrew: boolean,
): { readonly left: string; readonly right: readonly [string, string] } {
  const when = leave
    ? `Leave at ${leaveLevelWords(leave, system, true)}.`
    : `${LEAVE_NOT_SET}: set it on the Watch page.`;
  return {
    left: [
      "Temporary levee: it can fail without warning.",
      ...(forCrew ? [when] : []),
      "Not a permit: local codes and licensed engineers decide.",
    ].join(" "),
    right: ["Another number on the command-post board?", "This page is old. Do not build from it."],
  };
}

/** Over the lines that are left on the last page of a sheet. */
export const NOTES_TITLE = "Notes: what was found, what was changed, and the hour";
