import { signal } from "@preact/signals";
import { asFailure, type Failure, type Outcome, Refusal } from "../../shared/failure.ts";
import type { LonLat } from "../../shared/plan.ts";
import {
  type FootprintFile,
  type Footprints,
  placeFootprints,
} from "../../shared/plan-footprints.ts";
import { gridQuestionWords, otherGrid } from "../../shared/words/footprints.ts";
import { readFootprintsOf } from "../document/files.ts";
import { engine } from "../engine.ts";
import { pick, showFootprints } from "./footprints.ts";
import { ground } from "./ground.ts";

/** Why the last footprint file was not taken; null when it was. */
export const footprintFailure = signal<Failure | null>(null);
/** What was left out of the file that was taken. */
export const footprintNotes = signal<readonly string[]>([]);
/** Footprints in a grid that the file names otherwise than the elevation data, for the person to say yes to. */
export const gridQuestion = signal<{
  readonly name: string;
  readonly file: FootprintFile;
  readonly words: string;
} | null>(null);

/** Puts the buildings of a GeoJSON file on the map to pick from; what is wrong with it stands in `footprintFailure`. */
export async function importFootprints(chosen: File): Promise<void> {
  const read = await readFootprintsOf(chosen);
  gridQuestion.value = null;
  if (!read.ok) return fail(read.failure);
  const { reference } = read.value;
  const crs = ground.peek()?.crs ?? null;
  if (reference.kind === "named" && reference.name !== codeOf(crs)) {
    const placed = await placedOnGrid(read.value);
    if (!placed.ok || crs === null) return fail(otherGrid(reference.name, crs));
    footprintFailure.value = null;
    const words = gridQuestionWords(reference.name, crs, placed.value.footprints.length);
    gridQuestion.value = { name: chosen.name, file: read.value, words };
    return;
  }
  take(
    chosen.name,
    reference.kind === "degrees"
      ? placeFootprints(read.value, null, ground.value?.bounds ?? null)
      : await placedOnGrid(read.value),
  );
}

/** The person's answer to `gridQuestion`. */
export async function answerGrid(isSame: boolean): Promise<void> {
  const asked = gridQuestion.peek();
  gridQuestion.value = null;
  if (asked && isSame) take(asked.name, await placedOnGrid(asked.file));
}

function take(name: string, placed: Outcome<Footprints>): void {
  if (!placed.ok) {
    fail(placed.failure);
    return;
  }
  const { footprints, notes } = placed.value;
  footprintFailure.value = null;
  footprintNotes.value = notes;
  showFootprints(name, footprints);
  if (footprints.length === 1) pick(footprints[0]!);
}

function fail(failure: Failure): void {
  footprintFailure.value = failure;
}

/** Outlines in the grid of the elevation data, on Earth. */
async function placedOnGrid(file: FootprintFile): Promise<Outcome<Footprints>> {
  const open = ground.peek();
  if (!open) return { ok: false, failure: otherGrid(null, null) };
  const grid = Float64Array.from(file.outlines.flatMap(({ corners }) => corners.flat()));
  try {
    const { lonLat } = await engine.lonLatOf({ grid });
    const places = Array.from(
      { length: lonLat.length / 2 },
      (_, i): LonLat => [lonLat[2 * i]!, lonLat[2 * i + 1]!],
    );
    if (places.some((at) => at.some(Number.isNaN)))
      return { ok: false, failure: otherGrid(null, open.crs) };
    return placeFootprints(file, places, open.bounds);
  } catch (thrown) {
    if (thrown instanceof Refusal) return { ok: false, failure: asFailure(thrown) };
    throw thrown;
  }
}

function codeOf(crs: string | null): string | null {
  return /EPSG:\d+/.exec(crs ?? "")?.[0] ?? null;
}
