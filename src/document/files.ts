import { type Failure, failureOf, type Outcome, refused } from "../../shared/failure.ts";
import type { ShapeFile, ShapeOptions } from "../../shared/imports/found-shapes.ts";
import { MAX_SHAPE_BYTES } from "../../shared/imports/shape-files.ts";
import { loadPart } from "../../shared/load-part.ts";
import type { Plan } from "../../shared/plan.ts";
import {
  MAX_PLAN_CHARACTERS,
  type ReadPlan,
  readPlanFile,
  writePlanFile,
} from "../../shared/plan-file.ts";
import type { TextFile } from "../../shared/plan-json.ts";

const SHAPE_READER = () => import("../../shared/imports/read-shape-file.ts");
const GEOJSON = "application/geo+json";

/** Reads a chosen or dropped file as a plan; its size is looked at before its text. */
export function readPlanOf(file: File): Promise<Outcome<ReadPlan>> {
  return readText(file, "plan", MAX_PLAN_CHARACTERS, readPlanFile);
}

/** Reads the outlines and lines of a chosen or dropped file. */
export async function readShapesOf(
  file: File,
  options: ShapeOptions = {},
): Promise<Outcome<ShapeFile>> {
  if (file.size > MAX_SHAPE_BYTES) {
    return { ok: false, failure: tooLarge("shapes", file, MAX_SHAPE_BYTES) };
  }
  const bytes = await file.arrayBuffer().catch((thrown: unknown) => cannotRead(file, thrown));
  if (!(bytes instanceof ArrayBuffer)) return { ok: false, failure: bytes };
  const parse = (xml: string) => new DOMParser().parseFromString(xml, "text/xml");
  try {
    const { readShapeFile } = await loadPart("the reader of shapes", SHAPE_READER);
    return await readShapeFile(new Uint8Array(bytes), parse, options);
  } catch (thrown) {
    return refused(thrown);
  }
}

/** Hands the plan to the person as a file to save, named for its title. */
export function savePlanFile(plan: Plan): void {
  saveFile(writePlanFile(plan), { type: GEOJSON, name: planFileName(plan.title) });
}

/** Hands a text or a picture to the person as a file of a media type and a name. */
export function saveFile(
  content: string | Blob,
  { type, name }: { readonly type: string; readonly name: string },
): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
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
  kind: TextFile,
  most: number,
  read: (text: string) => Outcome<T>,
): Promise<Outcome<T>> {
  if (file.size > most) return { ok: false, failure: tooLarge(kind, file, most) };
  const text = await file.text().catch((thrown: unknown) => cannotRead(file, thrown));
  return typeof text === "string" ? read(text) : { ok: false, failure: text };
}

function tooLarge(file: TextFile, { size }: File, most: number): Failure {
  return failureOf("plan/too-large", { file, came: size, most });
}

function cannotRead({ name }: File, thrown: unknown): Failure {
  const cause = thrown instanceof Error ? thrown.message : String(thrown);
  return failureOf("plan/cannot-read", { name, cause });
}
