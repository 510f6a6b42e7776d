import { allChecks } from "../../shared/all-checks.ts";
import { mustFixCount } from "../../shared/completeness.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { FILE_FORMATS, type FileFormat } from "../../shared/exports/formats.ts";
import { asFailure } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import { failureText } from "../../shared/words/failure.ts";
import { leftOut } from "../../shared/words/left-out.ts";
import { levelDoubts } from "../../shared/words/level-doubts.ts";
import { mustFixLead, NOT_TRACED } from "../../shared/words/line-state.ts";
import { stakesWrittenWords } from "../../shared/words/terminal.ts";
import { lineTitle } from "../../shared/words/title.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { verticalDatumWords } from "../../shared/words/vertical-datum.ts";
import { lineAsked } from "./asked-line.ts";
import { MARK_HELP, MARK_OPTIONS } from "./marks.ts";
import { openedPlan, planAndRasters } from "./opened-plan.ts";
import { systemFrom, UNITS_OPTION } from "./report-units.ts";
import { Misuse, type Terminal, type Verb } from "./verb.ts";
import { readWords } from "./words.ts";
import { refuseInput, writeWhole } from "./write-file.ts";

const NAMES = FILE_FORMATS.map(({ as }) => as);

const HELP = `drystead export PLAN.geojson --terrain RASTER... --as ${NAMES.join("|")} --out FILE
               [--line LINE] [--units us|metric] [--vertical-unit m|ft|us-ft]
               [--no-data VALUE...] [--keep-value VALUE...]

Writes one line of the plan with its stakes to a file that other programs open.

  PLAN.geojson       a plan file; it comes before --terrain
  --terrain RASTER   one raster, or the tiles of one survey; GeoTIFF or Esri ASCII grid,
                     a file or a web address (https://...), of which only the parts needed are read
  --as               csv      the stakes, one row each, with what must be fixed and the cautions above them
                     geojson  line, base and stakes, in longitude and latitude
                     gpx      the stakes as waypoints and the line as a track, GPX 1.1; elevations in meters
                     kml      line, base and stakes, KML 2.2
                     dxf      a drawing on the grid of the elevation data, in the unit of that grid
  --out FILE         the file to write; one that is there is replaced, once the new one is whole. - writes to
                     standard output
  --line LINE        letter, name or id of the line; left out: the plan's chosen line, else its only one
  --vertical-unit    unit of the raster's heights, when the file does not state it
${MARK_HELP}
  --units us|metric  units of figures and sentences in the file (us when left out)

Every file names its units and vertical datum, what must be fixed on the line, and the cautions. Where there is no
elevation data nothing is written as a figure. What was written is said on standard error.
`;

/** `export`: one line of a plan as a file for other programs. */
export const exportLine: Verb = {
  name: "export",
  summary: "one line with its stakes as CSV, GeoJSON, GPX, KML or DXF",
  help: HELP,
  run: runExport,
};

async function runExport(terminal: Terminal): Promise<string> {
  const { words, resolve, say } = terminal;
  const read = readWords(words, {
    "--terrain": "many",
    "--as": "one",
    "--out": "one",
    "--line": "one",
    "--vertical-unit": "one",
    ...MARK_OPTIONS,
    ...UNITS_OPTION,
  });
  const given = planAndRasters("export", read);
  const { options } = read;
  const out = options.get("--out")?.[0];
  const format = formatFrom(options.get("--as")?.[0]);
  if (out === undefined) throw new Misuse("export needs --out and a file to write.");
  const system = systemFrom(options);
  const target = out === "-" ? null : resolve(out);
  if (target !== null) await refuseInput(target, [given.planPath, ...given.rasters].map(resolve));

  const lineWord = options.get("--line")?.[0];
  const check = (plan: Plan) => void lineAsked(plan, lineWord);
  const { plan, engine, terrain } = await openedPlan(
    { ...given, options, system, check },
    terminal,
  );

  const { id } = lineAsked(plan, lineWord);
  const alternative = plan.alignments.find((each) => each.id === id)!;
  const [line] = (await engine.size({ plan, ids: [id] })).lines;
  const trace = await engine.traceWater({ plan }).catch((thrown: unknown) => {
    say(`${NOT_TRACED} ${failureText(asFailure(thrown), system)}`);
    return null;
  });
  const exported: Exported = {
    ...{ plan, alternative, line: line!, checks: allChecks(line!, trace), system },
    ...{ isTraced: trace !== null, verticalDatum: verticalDatumWords(plan, terrain) },
  };
  const text = await format.write(exported, (places) => engine.toGrid({ places }));
  const faults = mustFixCount(exported.checks);
  for (const sentence of [
    ...leftOut([exported.line], system),
    ...levelDoubts([exported.line], unitsOf(system)),
    ...(faults > 0 ? [mustFixLead(faults)] : []),
  ])
    say(sentence);
  if (target === null) return text;
  await writeWhole(target, text);
  const { stations } = exported.line;
  say(stakesWrittenWords(lineTitle(plan, exported.line), stations.length, out));
  return "";
}

function formatFrom(word: string | undefined): FileFormat {
  const format = FILE_FORMATS.find(({ as }) => as === word);
  if (format) return format;
  throw new Misuse(
    word === undefined
      ? `export needs --as and one of ${NAMES.join(", ")}.`
      : `--as is one of ${NAMES.join(", ")}; came ${word}.`,
  );
}
