import type { Plan } from "../../shared/plan.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { groundNoteWords } from "../../shared/words/ground-notes.ts";
import { note } from "../../shared/words/terminal.ts";
import { readPlan, terrainFiles } from "./files.ts";
import { MARK_OPTIONS, marksFrom } from "./marks.ts";
import { onTheseFiles, tellUnits } from "./own-ground.ts";
import { systemFrom, UNITS_OPTION } from "./report-units.ts";
import { sayNotes } from "./say-notes.ts";
import { unitFrom } from "./units.ts";
import { Misuse, type Terminal } from "./verb.ts";
import { WAYS_OPTIONS, waysFrom, withWays } from "./ways.ts";
import { type Read, readWords } from "./words.ts";

/** What a verb that works on one plan and its elevation data is given. */
interface PlanAndRasters {
  readonly planPath: string;
  readonly rasters: readonly string[];
}

/** @throws Misuse where the command line does not name one plan file and a raster */
export function planAndRasters(verb: string, { plain, options }: Read): PlanAndRasters {
  const [planPath, ...more] = plain;
  const rasters = options.get("--terrain");
  if (planPath === undefined) throw new Misuse(`${verb} needs a plan file, before --terrain.`);
  if (more.length > 0) throw new Misuse(`${verb} takes one plan file; ${more[0]} is one too many.`);
  if (!rasters) throw new Misuse(`${verb} needs --terrain and at least one raster.`);
  return { planPath, rasters };
}

interface Asked extends PlanAndRasters {
  readonly options: Read["options"];
  readonly system: UnitSystem;
  /** Refuses a plan that the verb can do nothing with, before its elevation data is opened. */
  readonly check?: ((plan: Plan) => void) | undefined;
}

/** The plan with its elevation data open in an engine; what is to be known of both is said. */
export async function openedPlan(
  { planPath, rasters, options, system, check }: Asked,
  { startEngine, resolve, say }: Terminal,
) {
  const unit = unitFrom(options.get("--vertical-unit")?.[0]);
  const { plan: read, notes } = await readPlan(resolve(planPath));
  sayNotes(notes, system, say);
  check?.(read);
  const files = await terrainFiles(rasters.map(resolve));
  const plan = onTheseFiles(read, files, say, system);
  const marks = marksFrom(options, plan, files);
  const ground = { files, verticalUnit: unit ?? plan.ground.verticalUnit, marks };
  const engine = await startEngine();
  const terrain = await engine.openTerrain(ground).catch(tellUnits(engine, files, plan, say));
  for (const each of terrain.notes) say(note(groundNoteWords(each)));
  return { plan, ground, engine, terrain };
}

/** The same of a verb that takes culverts and roads from files: the plan has them. */
export async function openedWithWays(verb: string, terminal: Terminal, check?: Asked["check"]) {
  const read = readWords(terminal.words, {
    "--terrain": "many",
    "--vertical-unit": "one",
    ...MARK_OPTIONS,
    ...UNITS_OPTION,
    ...WAYS_OPTIONS,
  });
  const given = planAndRasters(verb, read);
  const { options } = read;
  const system = systemFrom(options);
  const ways = waysFrom(options);
  const { plan, ...opened } = await openedPlan({ ...given, options, system, check }, terminal);
  return { ...opened, plan: await withWays(plan, ways, { ...opened, system }, terminal), system };
}
