import { refusal } from "../../shared/failure.ts";
import { foundAlternatives } from "../../shared/found-alternative.ts";
import type { Engine, OpenTerrainRequest } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import {
  DEFAULT_KEY_IN_M,
  DEFAULT_MAX_CORNERS,
  type FindRingRequest,
} from "../../shared/search-types.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { foundWords } from "../../shared/words/against.ts";
import { leftOut } from "../../shared/words/left-out.ts";
import { levelDoubts } from "../../shared/words/level-doubts.ts";
import { howGoodWords, searchNoteWords } from "../../shared/words/search.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { MARK_HELP, MARK_OPTIONS } from "./marks.ts";
import { numberFrom } from "./number.ts";
import { openedPlan, planAndRasters } from "./opened-plan.ts";
import { systemFrom, UNITS_HELP, UNITS_OPTION } from "./report-units.ts";
import { figuresOf, withFound } from "./site-report.ts";
import { Misuse, type Terminal, type Verb } from "./verb.ts";
import { readWords } from "./words.ts";

const DEFAULT_WINDOW_M = 60;
/** Long enough that the answer does not hang on the machine, milliseconds. */
const PATIENCE_MS = 120_000;

const HELP = `drystead site PLAN.geojson --terrain RASTER... [--window-m ${DEFAULT_WINDOW_M}] [--max-corners ${DEFAULT_MAX_CORNERS}]
              [--key-in-m ${DEFAULT_KEY_IN_M}] [--building NAME...] [--judge estimate|proof|none]
              [--vertical-unit m|ft|us-ft]
               [--no-data VALUE...] [--keep-value VALUE...] [--units us|metric]

Finds the line around the plan's buildings that needs the least placed volume, and prints the plan file on
standard output with the found line added as one more alternative: a ring, or a line tied in at both ends
where ground above the top of levee saves a part. Where separate lines need less than one, each is added.

  PLAN.geojson       a plan file with at least one building; it comes before --terrain
  --terrain RASTER   one raster, or the tiles of one survey; GeoTIFF or Esri ASCII grid,
                     a file or a web address (https://...), of which only the parts needed are read
  --window-m         how far from the buildings the line may run, meters
  --max-corners      most corners of the line
  --key-in-m         length carried on into high ground where the line ties in, meters
  --building         names or ids of the buildings to go around; all of them when left out
  --judge            say how good the line is: by an estimate (about a second), by a proof where one can be
                     had (some seconds), or not at all
  --vertical-unit    unit of the raster's heights, when the file does not state it
${MARK_HELP}
${UNITS_HELP}

The figures of the line are properties of its feature, under the names that "size" has for its totals, with
"windowM", "maxCorners", "enclosedM2", "encloses" and "howGood". They are as found: nothing keeps them up
when the line is edited. What was found is said on standard error too.
`;

/** `site`: the line that needs the fewest bags, as one more alternative of the plan. */
export const site: Verb = {
  name: "site",
  summary: "the ring that needs the fewest bags, added to the plan",
  help: HELP,
  run: runSite,
};

const OPTIONS = {
  "--terrain": "many",
  "--vertical-unit": "one",
  ...MARK_OPTIONS,
  ...UNITS_OPTION,
  "--window-m": "one",
  "--max-corners": "one",
  "--key-in-m": "one",
  "--building": "many",
  "--judge": "one",
} as const;

async function runSite(terminal: Terminal): Promise<string> {
  const { words, startEngine, say } = terminal;
  const read = readWords(words, OPTIONS);
  const { options } = read;
  const given = planAndRasters("site", read);
  const system = systemFrom(options);
  const { windowM, maxCorners, keyInM } = figuresAsked(options);
  const judge = judgeFrom(options.get("--judge")?.[0]);

  const named = options.get("--building");
  const check = (plan: Plan) => void structuresNamed(plan, named);
  const { plan, ground, engine } = await openedPlan({ ...given, options, system, check }, terminal);

  const structureIds = structuresNamed(plan, named);
  const window = { reachM: windowM };
  const ring = { structureIds, window, maxCorners, keyInM, judge, timeCapMs: PATIENCE_MS };
  const found = await engine.findRing({ plan, ...ring });
  const added = foundAlternatives(plan, found.lines);
  const alignments = [...plan.alignments, ...added];
  const lines = await sizedAlone(await startEngine(), ground, { ...plan, alignments });
  const drawn = lines.slice(0, plan.alignments.length);
  const sized = lines.slice(plan.alignments.length);
  const said = [
    ...foundWords(sized, drawn, system),
    ...leftOut(lines, system),
    ...levelDoubts(lines, unitsOf(system)),
    ...found.notes.map((note) => searchNoteWords(note, unitsOf(system))),
  ];
  for (const sentence of said) say(sentence);
  for (const { howGood } of found.lines) if (howGood) say(howGoodWords(howGood));
  const figures = sized.map(({ totals }, k) =>
    figuresOf(totals, found.lines[k]!, { windowM, maxCorners }),
  );
  return writePlanFile(withFound(plan, added, figures));
}

/** Lines of a plan as `size` gives them: by an engine that has read nothing else, so that no digit differs. */
async function sizedAlone(
  engine: Engine,
  ground: OpenTerrainRequest,
  plan: Plan,
): Promise<readonly SizedLine[]> {
  await engine.openTerrain(ground);
  return (await engine.size({ plan })).lines;
}

function figuresAsked(options: ReadonlyMap<string, readonly string[]>) {
  const window = numberFrom(options, "--window-m", { least: 1, most: 1000 });
  const corners = numberFrom(options, "--max-corners", { least: 4, most: 200, whole: true });
  const keyIn = numberFrom(options, "--key-in-m", { least: 0, most: 50 });
  return {
    windowM: window ?? DEFAULT_WINDOW_M,
    maxCorners: corners ?? DEFAULT_MAX_CORNERS,
    keyInM: keyIn ?? DEFAULT_KEY_IN_M,
  };
}

function judgeFrom(word = "estimate"): FindRingRequest["judge"] {
  if (word === "none") return undefined;
  if (word === "estimate" || word === "proof") return word;
  throw new Misuse(`--judge is one of estimate, proof, none; came ${word}.`);
}

/** Ids of the structures that are named by name or id. @throws Refusal `plan/no-such-structure` */
function structuresNamed(plan: Plan, words?: readonly string[]): string[] | undefined {
  return words?.map((word) => {
    const structure = plan.structures.find(({ id, name }) => id === word || name === word);
    if (structure) return structure.id;
    const has = plan.structures.map(({ name }) => name);
    throw refusal("plan/no-such-structure", { came: word, has });
  });
}
