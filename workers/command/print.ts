import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, extname, join } from "node:path";
import { allChecks } from "../../shared/all-checks.ts";
import { mustFixCount } from "../../shared/completeness.ts";
import { Refusal, refusal } from "../../shared/failure.ts";
import type { MarkChoice } from "../../shared/ground-marks.ts";
import { letterOfLine } from "../../shared/line-letter.ts";
import type { GroundSummary, TerrainFile } from "../../shared/messages.ts";
import type { Plan, VerticalUnit } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { planNumber } from "../../shared/plan-number.ts";
import { isAddress } from "../../shared/raster-address.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { groundNoteWords } from "../../shared/words/ground-notes.ts";
import { leftOut } from "../../shared/words/left-out.ts";
import { levelDoubts } from "../../shared/words/level-doubts.ts";
import { faultsOnLineWords, note, printedWords } from "../../shared/words/terminal.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { lineAsked } from "./asked-line.ts";
import { readPlan, terrainFiles, withSideCars } from "./files.ts";
import { findBrowser } from "./find-browser.ts";
import { MARK_HELP, MARK_OPTIONS, marksFrom } from "./marks.ts";
import { planAndRasters } from "./opened-plan.ts";
import { onTheseFiles, tellUnits } from "./own-ground.ts";
import { type LineToPrint, type PaperName, printPages } from "./print-pages.ts";
import { systemFrom, UNITS_OPTION } from "./report-units.ts";
import { saveAddressed } from "./save-addressed.ts";
import { sayNotes } from "./say-notes.ts";
import { unitFrom } from "./units.ts";
import { Misuse, type Terminal, type Verb } from "./verb.ts";
import { readWords } from "./words.ts";
import { refuseInput, writeWhole } from "./write-file.ts";

const HELP = `drystead print PLAN.geojson --terrain RASTER... --out FOLDER [--paper letter|a4]
               [--line LINE] [--units us|metric] [--vertical-unit m|ft|us-ft]
               [--no-data VALUE...] [--keep-value VALUE...]

Writes the printed pages as PDF: one file for each line of the plan, with every page labeled (Build 1, Stakes 2).

  PLAN.geojson       a plan file; it comes before --terrain
  --terrain RASTER   one raster, or the tiles of one survey; GeoTIFF or Esri ASCII grid,
                     a folder, a GDAL VRT, or a web address (https://...), which is copied whole for the pages
  --out FOLDER       where the files go; it is made if it is not there, and a file of the same name is replaced
  --paper            letter (when left out) or a4
  --line LINE        letter, name or id of one line; left out: every line of the plan
  --vertical-unit    unit of the raster's heights, when the file does not state it
${MARK_HELP}
  --units us|metric  units of the pages (us when left out)

The pages are those of the program on screen, laid out by an installed Chrome or Chromium (CHROME_PATH names
another) on this machine alone. Every page must have the number of the plan given, calculated here as well, or
nothing is written. The program must be built: npm run build.
`;

/** `print`: the printed pages of each line as a PDF file. */
export const print: Verb = {
  name: "print",
  summary: "the printed pages of each line as PDF",
  help: HELP,
  run: runPrint,
};

/** A command line that can be followed. */
interface Asked {
  readonly planPath: string;
  readonly rasterPaths: readonly string[];
  /** Folder as the person typed it. */
  readonly out: string;
  readonly paper: PaperName;
  readonly lineWord: string | undefined;
  readonly unit: VerticalUnit | null;
  readonly system: UnitSystem;
  readonly options: ReadonlyMap<string, readonly string[]>;
}

/** The plan as it is on its ground, and the lines to print, sized. */
interface Counted {
  readonly plan: Plan;
  readonly lines: readonly SizedLine[];
  readonly files: readonly TerrainFile[];
}

async function runPrint(terminal: Terminal): Promise<string> {
  const asked = askedFor(terminal);
  const read = await readAsked(asked, terminal);
  const executablePath = findBrowser();
  const counted = await count(asked, read, terminal);
  const folder = terminal.resolve(asked.out);
  await makeFolder(folder);
  const own = await mkdtemp(join(tmpdir(), "drystead-print-"));
  try {
    const lines = await Promise.all(
      counted.lines.map((line) => lineToPrint(asked, counted.plan, line, { folder, own })),
    );
    await printPages({
      ...{ executablePath, paper: asked.paper, system: asked.system, lines },
      terrainPaths: await pathsOf(counted.files, asked, own, terminal),
      async write({ pdfPath, letter, number }, pdf, pages) {
        await writeWhole(pdfPath, pdf);
        const name = join(asked.out, basename(pdfPath));
        terminal.say(printedWords({ letter, number, pages, name }));
      },
    });
  } finally {
    await rm(own, { recursive: true, force: true });
  }
  return "";
}

function askedFor({ words, resolve }: Terminal): Asked {
  const read = readWords(words, {
    "--terrain": "many",
    "--out": "one",
    "--paper": "one",
    "--line": "one",
    "--vertical-unit": "one",
    ...MARK_OPTIONS,
    ...UNITS_OPTION,
  });
  const { planPath, rasters } = planAndRasters("print", read);
  const { options } = read;
  const out = options.get("--out")?.[0];
  if (out === undefined) throw new Misuse("print needs --out and a folder.");
  return {
    ...{ planPath: resolve(planPath), rasterPaths: rasters.map(resolve), out, options },
    paper: paperFrom(options.get("--paper")?.[0]),
    lineWord: options.get("--line")?.[0],
    unit: unitFrom(options.get("--vertical-unit")?.[0]) ?? null,
    system: systemFrom(options),
  };
}

/** The plan, and the id of the line named; null where all are to be printed. */
interface Read {
  readonly plan: Plan;
  readonly id: string | null;
}

async function readAsked(asked: Asked, { say }: Terminal): Promise<Read> {
  const { planPath, lineWord } = asked;
  const { plan, notes } = await readPlan(planPath);
  sayNotes(notes, asked.system, say);
  const { id } = lineAsked(plan, lineWord ?? plan.alignments[0]?.id);
  return { plan, id: lineWord === undefined ? null : id };
}

/** Sizes the lines asked for, and says what must be fixed on them and what is not known of them. */
async function count(asked: Asked, read: Read, { startEngine, say }: Terminal): Promise<Counted> {
  const { system } = asked;
  const files = await terrainFiles(asked.rasterPaths);
  const onIt = onTheseFiles(read.plan, files, say, system);
  const marks = marksFrom(asked.options, onIt, files);
  const engine = await startEngine();
  const verticalUnit = asked.unit ?? onIt.ground.verticalUnit;
  const ground = await engine
    .openTerrain({ files, verticalUnit, marks })
    .catch(tellUnits(engine, files, onIt, say));
  for (const each of ground.notes) say(note(groundNoteWords(each)));
  const plan = asOpened(onIt, files, ground, marks);
  const ids = read.id === null ? plan.alignments.map(({ id }) => id) : [read.id];
  const { lines } = await engine.size({ plan, ids });
  const trace = await engine.traceWater({ plan }).catch(() => null);
  for (const line of lines) {
    const faults = mustFixCount(allChecks(line, trace));
    const about = [...leftOut([line], system), ...levelDoubts([line], unitsOf(system))];
    if (faults > 0) about.push(faultsOnLineWords(letterOfLine(plan, line.id), faults));
    for (const sentence of about) say(sentence);
  }
  return { plan, lines, files };
}

/** Where the files of the ground are on this machine: of those at a web address copies, which the browser opens. */
async function pathsOf(
  files: readonly TerrainFile[],
  { rasterPaths }: Asked,
  own: string,
  { say }: Terminal,
): Promise<string[]> {
  const here = await withSideCars(rasterPaths.filter((path) => !isAddress(path)));
  const paths = here.map(({ path }) => path);
  for (const file of files) {
    if (file.host !== undefined) paths.push(await saveAddressed(file, own, say));
  }
  return paths;
}

/** Writes the plan file that the browser opens for a line. */
async function lineToPrint(
  { planPath, rasterPaths }: Asked,
  plan: Plan,
  line: SizedLine,
  { folder, own }: { readonly folder: string; readonly own: string },
): Promise<LineToPrint> {
  const letter = letterOfLine(plan, line.id);
  const pdfPath = join(folder, `${basename(planPath, extname(planPath))}-line-${letter}.pdf`);
  await refuseInput(pdfPath, [planPath, ...rasterPaths]);
  const ownPath = join(own, `${letter}.geojson`);
  await writeFile(ownPath, writePlanFile({ ...plan, chosenId: line.id }));
  const alignment = plan.alignments.find(({ id }) => id === line.id)!;
  return {
    ...{ planPath: ownPath, pdfPath, lineId: line.id, letter },
    ...{ site: plan.title, number: planNumber(plan, alignment, line) },
  };
}

function paperFrom(word = "letter"): PaperName {
  if (word === "letter") return "Letter";
  if (word === "a4") return "A4";
  throw new Misuse(`--paper is letter or a4; came ${word}.`);
}

/** The plan as the program has it once it has opened these files: what the command line said of them is in it. */
function asOpened(
  plan: Plan,
  files: readonly TerrainFile[],
  { verticalUnit, verticalUnitFrom }: GroundSummary,
  marks: readonly MarkChoice[],
): Plan {
  const terrain = files.map(({ name, blob }) => ({ name, bytes: blob.size }));
  const said = terrain.flatMap((file) => marks.map((mark) => ({ file, ...mark })));
  const kept = (plan.ground.marks ?? []).filter(
    ({ file }) => !terrain.some(({ name, bytes }) => name === file.name && bytes === file.bytes),
  );
  const text = writePlanFile({
    ...{ ...plan, terrain },
    ground: {
      ...plan.ground,
      verticalUnit: verticalUnitFrom === "person" ? verticalUnit : null,
      ...(marks.length > 0 ? { marks: [...kept, ...said] } : {}),
    },
  });
  const read = readPlanFile(text);
  if (read.ok) return read.value.plan;
  throw new Refusal(read.failure);
}

async function makeFolder(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true }).catch((error: NodeJS.ErrnoException) => {
    throw refusal("output/no-folder", { folder, cause: error.code ?? error.message });
  });
}
