import { signal } from "@preact/signals";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { type Failure, failureOf, type Outcome, refused } from "../../shared/failure.ts";
import type { ShapeFile, ShapeReference } from "../../shared/imports/found-shapes.ts";
import { saysUses, withLines, withNoGo, withSaid } from "../../shared/imports/into-plan.ts";
import {
  NO_PIPE_COLUMNS,
  type PipeColumns,
  withCulverts,
  withRoads,
} from "../../shared/imports/into-ways.ts";
import {
  cornersInTurn,
  type PlacedShapes,
  placeShapes,
} from "../../shared/imports/place-shapes.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { placeFootprints } from "../../shared/plan-footprints.ts";
import { gridQuestionWords, type ShapeUse } from "../../shared/words/shapes.ts";
import { edit } from "../document/edits/alternatives.ts";
import { readShapesOf } from "../document/files.ts";
import { tell } from "../document/notices.ts";
import { engine } from "../engine.ts";
import { pick, showFootprints } from "./footprints.ts";
import { ground } from "./ground.ts";

/** Shapes of a file where they are on Earth. */
interface Arrived {
  readonly name: string;
  readonly file: ShapeFile;
  /** Corners of all shapes in turn; null = the file has longitude and latitude. */
  readonly places: readonly LonLat[] | null;
}

/** What the person is to say of a file: whether it is in the raster's grid, or what its shapes are. */
export type ShapesQuestion =
  | {
      readonly about: "grid";
      readonly name: string;
      readonly words: string;
      /** They are. */
      readonly accept: () => void;
    }
  | {
      readonly about: "use";
      readonly name: string;
      readonly placed: PlacedShapes;
      readonly uses: readonly ShapeUse[];
      readonly take: (use: ShapeUse, pipes?: PipeColumns) => void;
    };

/** Why the last file of footprints was not taken; null when it was. */
export const footprintFailure = signal<Failure | null>(null);
/** What was left out of the file that was taken. */
export const footprintNotes = signal<readonly Failure[]>([]);
/** What is asked of files, in the order in which they came. */
export const shapesQuestions = signal<readonly ShapesQuestion[]>([]);

/**
 * Takes the shapes of a file as buildings to pick from, no-go areas or lines.
 * @param use what the person says they are; null = they are asked
 * @returns why the file cannot be taken; null when it is, or the person is asked
 */
export async function importShapes(chosen: File, use: ShapeUse | null): Promise<Failure | null> {
  const read = await readShapesOf(chosen, { leavesBad: use === "buildings" });
  if (!read.ok) return read.failure;
  const [name, file] = [chosen.name, read.value];
  const { reference } = file;
  if (reference.kind === "degrees") return taken({ name, file, places: null }, use);
  if (reference.kind === "text" || reference.kind === "code") {
    return onEarth(name, file, use, reference);
  }
  const crs = ground.peek()?.crs ?? null;
  if (reference.kind === "named" && reference.name !== codeOf(crs)) {
    return askGrid(name, file, use, { named: reference.name, crs });
  }
  return onEarth(name, file, use);
}

/** The same for buildings; what is wrong stands in `footprintFailure`. */
export async function importFootprints(chosen: File): Promise<void> {
  footprintFailure.value = await importShapes(chosen, "buildings");
}

async function onEarth(
  name: string,
  file: ShapeFile,
  use: ShapeUse | null,
  reference?: Extract<ShapeReference, { readonly fileName: string }>,
): Promise<Failure | null> {
  const places = await placesOf(file, reference);
  return places.ok ? taken({ name, file, places: places.value }, use) : places.failure;
}

/** Asks whether the shapes are in the grid of the raster after all; a failure where they cannot be. */
async function askGrid(
  name: string,
  file: ShapeFile,
  use: ShapeUse | null,
  { named, crs }: { readonly named: string; readonly crs: string | null },
): Promise<Failure | null> {
  const places = await placesOf(file);
  if (!places.ok || crs === null) return failureOf("footprints/other-grid", { named, ground: crs });
  const placed = placedOf({ name, file, places: places.value });
  if (!placed.ok) return failureOf("footprints/other-grid", { named, ground: crs });
  const { outlines, paths } = placed.value;
  const words = gridQuestionWords(named, crs, outlines.length + paths.length);
  const accept = () => void onEarth(name, file, use).then(tellFailure);
  ask({ about: "grid", name, words, accept });
  return null;
}

function taken(
  arrived: Arrived,
  use: ShapeUse | null,
  pipes: PipeColumns = NO_PIPE_COLUMNS,
): Failure | null {
  const { name, file, places } = arrived;
  const bounds = ground.peek()?.bounds ?? null;
  if (use === "buildings") {
    const found = placeFootprints(file, places, bounds);
    if (!found.ok) return found.failure;
    footprintFailure.value = null;
    footprintNotes.value = found.value.notes;
    showFootprints(name, found.value.footprints, { file, places });
    if (found.value.footprints.length === 1) pick(found.value.footprints[0]!);
    return null;
  }
  if (!bounds) return failureOf("shapes/no-ground");
  const placed = placedOf(arrived);
  if (!placed.ok) return placed.failure;
  if (use === null) return askUse(arrived, placed.value);
  const { outlines, paths, notes } = placed.value;
  if (use === "no-go" && outlines.length === 0) return failureOf("shapes/no-outlines");
  if (use === "lines" && outlines.length + paths.length === 0) return failureOf("shapes/no-lines");
  const isWay = use === "culverts" || use === "roads";
  if (isWay && paths.length === 0) return failureOf("shapes/no-paths");
  edit({ note: `Import ${name}`, change: (plan) => CHANGES[use](plan, placed.value, pipes) });
  const leftOut = use === "culverts" ? withCulverts(EMPTY_PLAN, paths, pipes).leftOut : 0;
  for (const note of notes) tell("info", note);
  if (leftOut > 0) tell("info", failureOf("shapes/pipe-figures-left-out", { figures: leftOut }));
  return null;
}

const CHANGES: Readonly<
  Record<
    Exclude<ShapeUse, "buildings">,
    (plan: Plan, placed: PlacedShapes, pipes: PipeColumns) => Plan
  >
> = {
  "no-go": (plan, { outlines }) => withNoGo(plan, outlines),
  lines: withLines,
  culverts: (plan, { paths }, pipes) => withCulverts(plan, paths, pipes).plan,
  roads: (plan, { paths }) => withRoads(plan, paths),
  "as-said": withSaid,
};

function askUse(arrived: Arrived, placed: PlacedShapes): null {
  const { name } = arrived;
  const areas: ShapeUse[] = placed.outlines.length > 0 ? ["buildings", "no-go"] : [];
  const said: ShapeUse[] = saysUses(placed) ? ["as-said"] : [];
  const ways: ShapeUse[] = placed.paths.length > 0 ? ["culverts", "roads"] : [];
  const uses: ShapeUse[] = [...said, ...areas, "lines", ...ways];
  const take = (use: ShapeUse, pipes?: PipeColumns) => tellFailure(taken(arrived, use, pipes));
  ask({ about: "use", name, placed, uses, take });
  return null;
}

function ask(question: ShapesQuestion): void {
  shapesQuestions.value = [...shapesQuestions.peek(), question];
}

/** Takes a question off the screen that is answered. */
export function answered(question: ShapesQuestion): void {
  shapesQuestions.value = shapesQuestions.peek().filter((each) => each !== question);
}

function tellFailure(failure: Failure | null): void {
  if (failure) tell("error", failure);
}

function placedOf({ file, places }: Arrived): Outcome<PlacedShapes> {
  try {
    return { ok: true, value: placeShapes(file, places, ground.peek()?.bounds ?? null) };
  } catch (thrown) {
    return refused(thrown);
  }
}

/** Where the corners of shapes are, from the grid of the raster or from a reference in well-known text. */
async function placesOf(
  file: ShapeFile,
  reference?: Extract<ShapeReference, { readonly fileName: string }>,
): Promise<Outcome<readonly LonLat[]>> {
  const open = ground.peek();
  if (!open && !reference)
    return {
      ok: false,
      failure: failureOf("footprints/other-grid", { named: null, ground: null }),
    };
  try {
    const { lonLat } = await engine.lonLatOf({
      grid: cornersInTurn(file),
      ...(reference && { reference }),
    });
    if (lonLat.some(Number.isNaN))
      return {
        ok: false,
        failure: failureOf("footprints/other-grid", { named: null, ground: open?.crs ?? null }),
      };
    const count = lonLat.length / 2;
    const at = (i: number): LonLat => [lonLat[2 * i]!, lonLat[2 * i + 1]!];
    return { ok: true, value: Array.from({ length: count }, (_, i) => at(i)) };
  } catch (thrown) {
    return refused(thrown);
  }
}

function codeOf(crs: string | null): string | null {
  return /EPSG:\d+/.exec(crs ?? "")?.[0] ?? null;
}
