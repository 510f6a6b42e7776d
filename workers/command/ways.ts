import { failureOf, refusal } from "../../shared/failure.ts";
import {
  type PipeColumns,
  type SizeUnit,
  withCulverts,
  withRoads,
} from "../../shared/imports/into-ways.ts";
import { type PlacedShape, placeShapes } from "../../shared/imports/place-shapes.ts";
import type { Engine, GroundSummary } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { FileRole } from "../../shared/words/refusals/terminal.ts";
import { note, outlinesLeftOutWords } from "../../shared/words/terminal.ts";
import { sayNotes } from "./say-notes.ts";
import { placesOf, refuseUnknownColumns, shapesIn } from "./shapes-in.ts";
import { unitFrom } from "./units.ts";
import { Misuse, type Terminal } from "./verb.ts";
import type { Read } from "./words.ts";

/** Options that add culverts and exit roads of files to a plan. */
export const WAYS_OPTIONS = {
  "--culverts": "one",
  "--first-invert-column": "one",
  "--last-invert-column": "one",
  "--invert-unit": "one",
  "--size-column": "one",
  "--size-unit": "one",
  "--roads": "one",
} as const;

export const WAYS_USAGE = `[--culverts FILE [--first-invert-column NAME] [--last-invert-column NAME]
               [--invert-unit m|ft|us-ft] [--size-column NAME] [--size-unit in|ft|mm|m]] [--roads FILE]`;

export const WAYS_HELP = `  --culverts         lines of a file as open culverts beside those of the plan; GeoJSON, KML, GPX, zipped
                     shapefile, FlatGeobuf or GeoParquet
  --first-invert-column, --last-invert-column, --size-column
                     columns of that file: bottom of the pipe at the first and at the last point of its line, its
                     inside diameter. Each needs its unit; without a column the ground at the end is used
  --roads            lines of a file as exit roads beside those of the plan`;

/** What a command line says of files of culverts and roads. */
export interface Ways {
  readonly culverts: string | null;
  readonly pipes: PipeColumns;
  readonly roads: string | null;
}

/** The elevation data that is open, and the units that are written. */
interface Opened {
  readonly engine: Engine;
  readonly terrain: GroundSummary;
  readonly system: UnitSystem;
}

const SIZE_UNITS: ReadonlyMap<string, SizeUnit> = new Map([
  ["in", "inch"],
  ["ft", "foot"],
  ["mm", "millimeter"],
  ["m", "meter"],
]);

/** @throws Misuse for columns without a unit, and columns of no file */
export function waysFrom(options: Read["options"]): Ways {
  const option = (name: keyof typeof WAYS_OPTIONS) => options.get(name)?.[0] ?? null;
  const culverts = option("--culverts");
  for (const name of Object.keys(WAYS_OPTIONS) as (keyof typeof WAYS_OPTIONS)[]) {
    if (culverts === null && name !== "--roads" && option(name) !== null)
      throw new Misuse(`${name} is of the file that --culverts names; there is none.`);
  }
  const firstInvert = option("--first-invert-column");
  const lastInvert = option("--last-invert-column");
  const invertUnit = unitFrom(option("--invert-unit") ?? undefined, "--invert-unit");
  if ((firstInvert ?? lastInvert) !== null && invertUnit === null)
    throw new Misuse("A column of inverts needs --invert-unit: m, ft or us-ft.");
  const size = option("--size-column");
  const sizeUnit = sizeUnitFrom(option("--size-unit"));
  if (size !== null && sizeUnit === null)
    throw new Misuse("--size-column needs --size-unit: in, ft, mm or m.");
  const pipes = { firstInvert, lastInvert, invertUnit, size, sizeUnit };
  return { culverts, pipes, roads: option("--roads") };
}

function sizeUnitFrom(word: string | null): SizeUnit | null {
  if (word === null) return null;
  const unit = SIZE_UNITS.get(word);
  if (unit) return unit;
  throw new Misuse(`--size-unit is one of ${[...SIZE_UNITS.keys()].join(", ")}; came ${word}.`);
}

/**
 * The plan with the culverts and roads of the files that are named, which lie on the elevation data that is open.
 * @throws Refusal `file/missing`, `shapes/...`, `culverts/no-column`, those of `readShapeFile` and `placeShapes`
 */
export async function withWays(
  plan: Plan,
  { culverts, pipes, roads }: Ways,
  ground: Opened,
  { resolve, say }: Pick<Terminal, "resolve" | "say">,
): Promise<Plan> {
  let whole = plan;
  if (culverts !== null) {
    const paths = await pathsIn(resolve(culverts), "culverts", ground, say);
    refuseUnknownColumns(
      [...new Set(paths.flatMap(({ columns }) => Object.keys(columns)))],
      [pipes.firstInvert, pipes.lastInvert, pipes.size],
      "culverts/no-column",
    );
    const { plan: more, leftOut } = withCulverts(whole, paths, pipes);
    if (leftOut > 0) {
      const of = failureOf("shapes/pipe-figures-left-out", { figures: leftOut });
      sayNotes([of], ground.system, say);
    }
    whole = more;
  }
  if (roads !== null) whole = withRoads(whole, await pathsIn(resolve(roads), "roads", ground, say));
  return whole;
}

/** The lines of a file that lie on the elevation data, outlines left out with a note. */
async function pathsIn(
  path: string,
  expected: FileRole,
  { engine, terrain, system }: Opened,
  say: Terminal["say"],
): Promise<readonly PlacedShape[]> {
  const file = await shapesIn(path, expected);
  const places = await placesOf(path, file, engine, terrain);
  const { paths, outlines, notes } = placeShapes(file, places, terrain.bounds);
  if (paths.length === 0) throw refusal("shapes/no-paths");
  sayNotes(notes, system, say, `${path}: `);
  if (outlines.length > 0) say(note(`${path}: ${outlinesLeftOutWords(outlines.length)}`));
  return paths;
}
