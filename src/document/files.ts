import { asFailure, type Failure, type Outcome } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import {
  MAX_PLAN_CHARACTERS,
  type ReadPlan,
  readPlanFile,
  writePlanFile,
} from "../../shared/plan-file.ts";
import {
  type FootprintFile,
  MAX_FOOTPRINT_CHARACTERS,
  readFootprints,
} from "../../shared/plan-footprints.ts";
import { tooLarge } from "../../shared/plan-json.ts";

const GEOJSON = "application/geo+json";

/** Reads a chosen or dropped file as a plan; its size is looked at before its text. */
export function readPlanOf(file: File): Promise<Outcome<ReadPlan>> {
  return readText(file, "a plan file", MAX_PLAN_CHARACTERS, readPlanFile);
}

/** Reads a chosen or dropped file as building footprints. */
export function readFootprintsOf(file: File): Promise<Outcome<FootprintFile>> {
  return readText(file, "a footprint file", MAX_FOOTPRINT_CHARACTERS, readFootprints);
}

/** Hands the plan to the person as a file to save, named for its title. */
export function savePlanFile(plan: Plan): void {
  const address = URL.createObjectURL(new Blob([writePlanFile(plan)], { type: GEOJSON }));
  const link = document.createElement("a");
  link.href = address;
  link.download = planFileName(plan.title);
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A file name from a plan's title: letters, digits and hyphens of any script, `.geojson`. */
export function planFileName(title: string): string {
  return `${fileStem(title, MOST_STEM) || "plan"}.geojson`;
}

/** Longest file name without its ending, characters. */
export const MOST_STEM = 60;

/** Letters, digits and hyphens of a text, cut to a length; empty when it has none. */
export function fileStem(text: string, longest: number): string {
  const plain = text.normalize("NFC").replace(/[^\p{L}\p{M}\p{N}]+/gu, "-");
  const cut = Array.from(plain.replace(/^-+/, "")).slice(0, longest).join("");
  return cut.replace(/-+$/, "");
}

async function readText<T>(
  file: File,
  words: string,
  most: number,
  read: (text: string) => Outcome<T>,
): Promise<Outcome<T>> {
  if (file.size > most) return { ok: false, failure: asFailure(tooLarge(words, file.size, most)) };
  const text = await file.text().catch((thrown: unknown) => cannotRead(file, thrown));
  return typeof text === "string" ? read(text) : { ok: false, failure: text };
}

function cannotRead(file: File, thrown: unknown): Failure {
  const cause = thrown instanceof Error ? thrown.message : String(thrown);
  return {
    code: "plan/cannot-read",
    message: `The file ${file.name} could not be read: ${cause}`,
    remedy: "It may have been moved or changed since you chose it. Choose it again.",
  };
}
