import { type Failure, givenOf } from "../failure.ts";
import { formatLength, type UnitSystem } from "../units.ts";
import type { TracedAlternative } from "../water-types.ts";
import { notKnownBecause } from "./dry.ts";
import { failureText } from "./failure.ts";
import { mustFixLead } from "./line-state.ts";

/** What is to be known beside a result. */
export function note(sentence: string): string {
  return `Note: ${sentence}`;
}

/** The option that gives what a refusal is for want of, after its remedy; empty where there is none. */
export function optionWords(failure: Failure): string {
  const { code } = failure;
  if (code === "ground/unit-unknown") return " Here: --vertical-unit m, ft or us-ft.";
  if (code === "forecast/zone-needed") return " Here: --zone America/Chicago, or your own.";
  const which = givenOf("forecast/which", failure);
  if (which) return ` Here: --series "${which.names[0]!}", or another of them.`;
  if (code === "forecast/unit") return " Here: --units ft or m.";
  const unknown = givenOf("ground/mark-unknown", failure);
  if (!unknown) return "";
  const { mark } = unknown;
  return ` Here: --no-data ${mark.value} if it marks missing data, --keep-value ${mark.value} if it is ground.`;
}

/** Where standard output takes no more. */
export function outputLostWords({
  code,
  message,
}: {
  code?: string | undefined;
  message: string;
}): string {
  return `The result could not be written to standard output: ${code === "ENOSPC" ? "the disk is full" : message}.\nMake room or write it elsewhere, and start again.`;
}

export function copiedWords(name: string, bytes: number): string {
  return `"${name}" is copied whole, ${Math.ceil(bytes / 1e6)} MB, for the pages.`;
}

interface Printed {
  readonly letter: string;
  readonly number: string;
  readonly pages: number;
  readonly name: string;
}

export function printedWords({ letter, number, pages, name }: Printed): string {
  return `Line ${letter}, plan number ${number}: ${pages} pages written to ${name}.`;
}

/** `Line A: 2 things must be fixed ...`. */
export function faultsOnLineWords(letter: string, faults: number): string {
  return `Line ${letter}: ${mustFixLead(faults)}`;
}

export function stakesWrittenWords(line: string, stakes: number, file: string): string {
  return `${line}: ${stakes} stakes written to ${file}.`;
}

export function dryNotKnownWords(traced: TracedAlternative): string {
  return `"${traced.name}": not known whether water reaches its buildings: ${notKnownBecause(traced)}.`;
}

export function outlinesLeftOutWords(count: number): string {
  return `${count === 1 ? "1 outline is" : `${count} outlines are`} left out; lines are taken.`;
}

export const NO_FLOOR_UNIT = "Floors are left out: say their unit with --floor-unit.";

export function groupsLeftWords({ tried, left }: { tried: number; left: number }): string {
  return `One ring was looked for around ${tried} groups of neighbors; ${left} more that may take fewer bags were not looked at.`;
}

export function coarseTraceWords(cellM: number, system: UnitSystem): string {
  return `The water is traced on cells of ${formatLength(cellM, system)}: the elevation data has too many for all.`;
}

interface Resumed {
  readonly known: number;
  readonly cutOff: number;
  readonly repeated: number;
}

/** What the file of an interrupted run has. */
export function resumedWords(path: string, { known, cutOff, repeated }: Resumed): string[] {
  return [
    `${known} buildings are answered already.`,
    ...(cutOff > 0 ? [`Lines of ${path} that are cut off: ${cutOff}. These are done again.`] : []),
    ...(repeated > 0
      ? [`Buildings that ${path} has twice: ${repeated}. The last answer counts.`]
      : []),
  ];
}

/** @param code of the reason */
export function failedWords(id: string, code: string): string {
  return `${id}: not checked (${code}).`;
}

export function checkedWords(done: number, total: number): string {
  return `${done} of ${total} buildings checked.`;
}

export function notCheckedWords(failed: number, total: number): string {
  return `${failed} of ${total} buildings could not be checked; --resume tries them again.`;
}

export function takingWords(version: string, queue: string, threads: number): string {
  return `Taking jobs of version ${version} from ${queue}, ${threads} at a time. Ctrl-C ends it.`;
}

export const ENDING = "Ending: the jobs at work are finished first.";

interface Tasks {
  readonly count: number;
  readonly of: "buildings" | "groups";
}

function tasksWords({ count, of }: Tasks): string {
  if (of === "buildings") return `${count} ${count === 1 ? "building" : "buildings"}`;
  return `${count} ${count === 1 ? "group" : "groups"} of neighbors`;
}

export function begunWords(tasks: Tasks): string {
  return `Begun: ${tasksWords(tasks)}.`;
}

export function doneWords(tasks: Tasks, seconds: number): string {
  return `Done: ${tasksWords(tasks)} in ${seconds.toFixed(1)} s.`;
}

export function refusedWords(failure: Failure): string {
  return `Refused: ${failureText(failure, "us")} (${failure.code})`;
}

export const JOB_BACK = "A job of a worker that is lost goes back to the queue.";

export function noWorkerWords(queue: string, version: string): string {
  return `No worker of this very program (${version}) takes the jobs. Start one of it on a machine that reads the same elevation data: drystead sweep-worker --queue ${queue}`;
}

/** What goes wrong between this machine and the queue. */
export function outageWords(queue: string, code: string | null, message: string): string {
  return code === null
    ? `${queue}: ${message}`
    : `No connection to ${queue} (${code}); it is tried again.`;
}
