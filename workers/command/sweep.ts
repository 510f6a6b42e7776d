import { stat } from "node:fs/promises";
import { basename } from "node:path";
import { bandLevels } from "../../shared/buildings/band-levels.ts";
import { type BuildingsEngine, checkBuildings } from "../../shared/buildings/check-buildings.ts";
import { MOST_ON_ONE_LINE } from "../../shared/buildings/check-types.ts";
import type { BuildingColumns, LeftOutKind } from "../../shared/buildings/from-shapes-types.ts";
import type { CheckedBuilding } from "../../shared/buildings/types.ts";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { isAddress } from "../../shared/raster-address.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { footprintNotes } from "../../shared/words/footprint-notes.ts";
import { groundNoteWords } from "../../shared/words/ground-notes.ts";
import {
  checkedWords,
  coarseTraceWords,
  failedWords,
  groupsLeftWords,
  NO_FLOOR_UNIT,
  notCheckedWords,
  note,
  resumedWords,
} from "../../shared/words/terminal.ts";
import { checkName } from "./check-name.ts";
import { readPlan, terrainFiles } from "./files.ts";
import { rounded } from "./json.ts";
import { MARK_HELP, MARK_OPTIONS, marksFrom } from "./marks.ts";
import { numberFrom } from "./number.ts";
import { onTheseFiles, tellUnits } from "./own-ground.ts";
import { readQueueAddress } from "./queue/address.ts";
import { systemFrom, UNITS_HELP, UNITS_OPTION } from "./report-units.ts";
import { sayNotes } from "./say-notes.ts";
import { choiceLine, timedWith } from "./sweep-choice.ts";
import { readBuildings } from "./sweep-footprints.ts";
import { buildingLine, groupLine } from "./sweep-lines.ts";
import { sweepPool } from "./sweep-pool.ts";
import { readResumed } from "./sweep-resume.ts";
import { stagesFrom } from "./sweep-stages.ts";
import { readStock } from "./sweep-stock.ts";
import type { ThreadPool } from "./thread-pool.ts";
import { unitFrom } from "./units.ts";
import { Misuse, NotAllDone, type Terminal, type Verb } from "./verb.ts";
import { readWords } from "./words.ts";

const HELP = `drystead sweep PLAN.geojson --buildings FILE --terrain RASTER... [--stock FILE]
               [--stages FROM:TO:STEP] [--resume FILE] [--most-people ${MOST_ON_ONE_LINE}]
               [--workers N | --queue redis://HOST:PORT]
               [--id-column NAME] [--name-column NAME] [--floor-column NAME] [--floor-unit m|ft|us-ft]
               [--priority-column NAME] [--take-in duplicate|sliver...] [--vertical-unit m|ft|us-ft]
               [--no-data VALUE...] [--keep-value VALUE...] [--units us|metric]

Which of many buildings flood, and when; the best line around each, its bags, hours and latest start; neighbors that
take fewer bags in one ring; and with --stock which to ring. One JSON line a building on standard output as each is
done, then the groups, then the choice; progress on standard error.

  PLAN.geojson       a plan file: its water, levee type, crew and time, forecast, no-go areas, sources, culverts and
                     drains count
  --buildings        building footprints; GeoJSON, KML, zipped shapefile, FlatGeobuf or GeoParquet; each feature is one
                     building; what is left out or in doubt is said
  --terrain RASTER   one raster, or the tiles of one survey; GeoTIFF or Esri ASCII grid
  --stock            what there is to build with: {"bags": 120000, "sandM3": 688, "sheetM2": 9000, "people": 180,
                     "mustDo": [], "mustNot": []}; parts may be left out, and are then not limited. Half of these
                     people are taken to be at work at a time
  --stages           count each line at these stages too, in feet, or in meters with --units metric; at these
                     elevations where the plan's water is given as one. The crests of a forecast with a low, a likely
                     and a high line are counted in any case, and a choice is made for each
  --resume           what an interrupted run wrote: buildings answered there are not searched again
  --workers          threads that search; as many as the machine has processors when left out
  --queue            search on other machines instead: a Redis server, and "drystead sweep-worker --queue" on each
                     machine, which finds the elevation data under the same path or at the same web address
  --most-people      most people who can work on one line at a time
  --id-column        columns of the footprints: a building's own id, name, elevation of its lowest floor, and what it
                     counts: "first", "never", or a number above 0 up to 1,000 (1 when left out)
  --floor-unit       unit of the floor column; without it no floor is taken
  --take-in          outlines that would be left out: duplicate for those that repeat another, sliver for those too
                     small or narrow for a building
  --vertical-unit    unit of the raster's heights, when the file does not state it
${MARK_HELP}
${UNITS_HELP}

"state" is the first that applies: no-data, dry (no connected water touches a wall at that stage: never more than
that), over-limit, no-room, too-late, can-be-ringed. What is not known is null. A building that could not be checked
has the reason in "failed", the others go on, and the exit code is 3. Buildings that are not ringed still need warning and leaving;
whom to ring is people's decision. Local codes and licensed engineers decide.
`;

/** `sweep`: many buildings at once. */
export const sweep: Verb = {
  name: "sweep",
  summary: "many buildings: which flood, which can be ringed, and which to ring with what there is",
  help: HELP,
  run: runSweep,
};

const OPTIONS = {
  "--buildings": "one",
  "--terrain": "many",
  "--stock": "one",
  "--stages": "one",
  "--resume": "one",
  "--workers": "one",
  "--queue": "one",
  "--most-people": "one",
  "--id-column": "one",
  "--name-column": "one",
  "--floor-column": "one",
  "--floor-unit": "one",
  "--priority-column": "one",
  "--take-in": "many",
  "--vertical-unit": "one",
  ...MARK_OPTIONS,
  ...UNITS_OPTION,
} as const;

type Options = ReadonlyMap<string, readonly string[]>;

async function runSweep(terminal: Terminal): Promise<string> {
  const { words, startEngine, resolve, say } = terminal;
  const { plain, options } = readWords(words, OPTIONS);
  const [planPath, ...more] = plain;
  const rasters = options.get("--terrain");
  const footprints = options.get("--buildings")?.[0];
  if (planPath === undefined) throw new Misuse("sweep needs a plan file, before the options.");
  if (more.length > 0) throw new Misuse(`sweep takes one plan file; ${more[0]} is one too many.`);
  if (footprints === undefined) throw new Misuse("sweep needs --buildings and a file.");
  if (!rasters) throw new Misuse("sweep needs --terrain and at least one raster.");
  const system = systemFrom(options);
  const unit = unitFrom(options.get("--vertical-unit")?.[0]);
  const columns = columnsFrom(options);
  const takenIn = takenInFrom(options);
  const threads = numberFrom(options, "--workers", { least: 1, most: 256, whole: true });
  const queueAddress = options.get("--queue")?.[0];
  if (queueAddress !== undefined && threads !== null) {
    throw new Misuse(
      "With --queue, the workers say how many threads they have: leave --workers out.",
    );
  }
  const queue = queueAddress === undefined ? null : readQueueAddress(queueAddress);
  const mostOnOneLine =
    numberFrom(options, "--most-people", { least: 1, most: 10_000, whole: true }) ??
    MOST_ON_ONE_LINE;

  const { plan: read, notes } = await readPlan(resolve(planPath));
  sayNotes(notes, system, say);
  const stages = levelsFrom(read, options.get("--stages")?.[0], system);
  const levelsM = [...new Set([...stages, ...Object.values(bandLevels(read) ?? {})])];
  const stockPath = options.get("--stock")?.[0];
  const stock = stockPath === undefined ? null : await readStock(resolve(stockPath));
  const paths = rasters.map(resolve);
  const files = await terrainFiles(paths);
  const plan = onTheseFiles(read, files, say, system);
  const marks = marksFrom(options, plan, files);
  const verticalUnit = unit ?? plan.ground.verticalUnit;
  const engine = await startEngine();
  const ground = await engine
    .openTerrain({ files, verticalUnit, marks })
    .catch(tellUnits(engine, files, plan, say));
  for (const each of ground.notes) say(note(groundNoteWords(each)));
  const listed = await readBuildings(resolve(footprints), { columns, takenIn }, engine, ground);
  sayNotes(listed.referenceNotes, system, say);
  for (const each of footprintNotes(listed, system)) say(note(each));
  if (columns.floor !== null && columns.floorUnit === null) {
    say(note(NO_FLOOR_UNIT));
  }

  const { buildings } = listed;
  const question = { plan, buildings, levelsM, mostOnOneLine };
  const asked = { ...question, ground: { verticalUnit, marks, files: await namesOf(paths) } };
  const of = { plan, check: checkName(asked) };
  const resumed = options.get("--resume")?.[0];
  const known = resumed === undefined ? [] : await goOnFrom(resolve(resumed), of.check, say);
  const pool = await sweepPool({
    ...{ queue, threads, files, buildings, check: of.check, say },
    ground: { paths, verticalUnit, marks },
  });
  try {
    return await checked();
  } catch (thrown) {
    throw pool.reasonOf(thrown);
  } finally {
    await pool.close();
  }

  async function checked(): Promise<string> {
    const out = inTurn(terminal.write);
    const tell = progressTo(say, buildings.length);
    const timed = timedWith(plan, stock, mostOnOneLine);
    const check = await checkBuildings(engineOver(engine, pool), pool.atOnce, question, {
      known,
      onChecked: (each) => {
        out.add(buildingLine(of, timed(each)));
        tell(each);
      },
    });
    const { groupsTried, trace } = check;
    const found = {
      buildings: check.buildings.map(timed),
      groups: check.groups.map(timed),
    };
    for (const group of found.groups) out.add(groupLine(of, group));
    if (groupsTried.left > 0) say(note(groupsLeftWords(groupsTried)));
    if (!trace.everyCell) say(note(coarseTraceWords(trace.cellM, system)));
    if (stock) out.add(await choiceLine(engine, plan, found, stock, mostOnOneLine));
    await out.done();
    const failed = found.buildings.filter((each) => each.failed !== null).length;
    if (failed > 0) {
      say(notCheckedWords(failed, buildings.length));
      throw new NotAllDone();
    }
    return "";
  }
}

/** The buildings that are answered in a file, and what is to be said of it. */
async function goOnFrom(path: string, check: string, say: Terminal["say"]) {
  const { known, cutOff, repeated } = await readResumed(path, check);
  const about = resumedWords(path, { known: known.length, cutOff, repeated });
  for (const each of about) say(note(each));
  return known;
}

function columnsFrom(options: Options): BuildingColumns {
  const named = (name: string) => options.get(name)?.[0] ?? null;
  return {
    ...{ id: named("--id-column"), name: named("--name-column"), floor: named("--floor-column") },
    floorUnit: unitFrom(named("--floor-unit") ?? undefined, "--floor-unit"),
    priority: named("--priority-column"),
  };
}

function takenInFrom(options: Options): ReadonlySet<LeftOutKind> {
  const named = options.get("--take-in") ?? [];
  return new Set(
    named.map((word) => {
      if (word === "duplicate" || word === "sliver") return word;
      throw new Misuse(`--take-in takes duplicate or sliver, not ${word}.`);
    }),
  );
}

/** Water at the gauge at the stages asked for, meters. */
function levelsFrom({ water }: Plan, word: string | undefined, system: UnitSystem): number[] {
  if (word === undefined) return [];
  const given = stagesFrom(word, system);
  if (water.by === "elevation") return given;
  return given.map((stageM) => waterElevationAtGauge({ ...water, stageM }));
}

async function namesOf(paths: readonly string[]) {
  return Promise.all(
    paths.map(async (path) => {
      if (isAddress(path)) return { name: path, bytes: 0, at: 0 };
      const { size, mtimeMs } = await stat(path);
      return { name: basename(path), bytes: size, at: mtimeMs };
    }),
  );
}

/** Traces in this thread, searches in the pool; answers rounded as they are written, so that a resumed run has the same. */
function engineOver(engine: Engine, pool: ThreadPool): BuildingsEngine {
  return {
    traceBuildings: engine.traceBuildings,
    checkBuilding: async (request, options) =>
      rounded(await pool.run("checkBuilding", request, options?.signal)) as CheckedBuilding,
    checkGroup: async (request, options) => pool.run("checkGroup", request, options?.signal),
  };
}

/** Writes lines one after the other while work goes on; a line that cannot be written ends the work at its end. */
function inTurn(write: Terminal["write"]) {
  let last: Promise<void> = Promise.resolve();
  return {
    add(line: string): void {
      last = last.then(() => write(line));
      last.catch(() => {});
    },
    done: () => last,
  };
}

const TELL_EVERY = 0.02;

function progressTo(say: Terminal["say"], total: number): (checked: CheckedBuilding) => void {
  let done = 0;
  let lastSaid = 0;
  return ({ id, failed }) => {
    done++;
    if (failed !== null) say(failedWords(id, failed));
    if (done < total && done - lastSaid < total * TELL_EVERY) return;
    lastSaid = done;
    say(checkedWords(done, total));
  };
}
