import { bagOrder } from "../../shared/bag-order.ts";
import { isCounted, isWhole, mustFixCount } from "../../shared/completeness.ts";
import { refusal } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { soonerLines } from "../../shared/time/ways-out.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { overallVerdict } from "../../shared/verdict.ts";
import { timeNotKnownWords } from "../../shared/words/crew.ts";
import { leaveWords } from "../../shared/words/leave.ts";
import { leftOut } from "../../shared/words/left-out.ts";
import { levelDoubts } from "../../shared/words/level-doubts.ts";
import { plugRows } from "../../shared/words/pipes.ts";
import { timeVerdictWords } from "../../shared/words/time-verdict.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { headlineWords, overallVerdictWords } from "../../shared/words/verdict.ts";
import { toJson } from "./json.ts";
import { MARK_HELP } from "./marks.ts";
import { openedWithWays } from "./opened-plan.ts";
import { checksReport, UNITS_HELP } from "./report-units.ts";
import type { Terminal, Verb } from "./verb.ts";
import { WAYS_HELP, WAYS_USAGE } from "./ways.ts";

const HELP = `drystead size PLAN.geojson --terrain RASTER... [--vertical-unit m|ft|us-ft]
               [--no-data VALUE...] [--keep-value VALUE...] [--units us|metric]
               ${WAYS_USAGE}

Heights, quantities and checks of every alternative in the plan, as JSON on standard output.

  PLAN.geojson       a plan file; it comes before --terrain
  --terrain RASTER   one raster, or the tiles of one survey; GeoTIFF or Esri ASCII grid,
                     a file or a web address (https://...), of which only the parts needed are read
  --vertical-unit    unit of the raster's heights, when the file does not state it
${MARK_HELP}
${WAYS_HELP}
${UNITS_HELP}

A plan file that holds only its features and
  "drystead": {"version": 1, "water": {"elevationM": 262.5, "freeboardM": 0.3048}}
is complete: everything else takes its default. All figures are meters, square meters, cubic meters and
kilograms, as their names say; where there is no elevation data they are null. "complete" is false where the
totals are not for the whole length of a line or no answer, "verdict" says what a line comes to and what to fix
first, in words and in "finding" as kinds and figures (water is not traced: see trace), "mustFix" counts what must be fixed; each check has its words and, in "finding", its kind and figures.
While the plan states no
people ("practice.people"), start of work ("time.startAt") or shifts ("time.shifts"), no hours are known and
"time" says which are missing. "reaches" says what each stretch
is built as ("section", from "reachSections" in the plan), its limit and what it takes ("materials");
"levelDoubt" is null, or why the water and the ground of a line do not belong together (no ground below the
water, or far off it): there is then no verdict on time, and with "countsUnknown" its counts are no answer;
"bagOrder" the bags to order and what they are for: placed, spare, on the poly sheeting;
"plugs" the plugs to get for the culverts and drains that the line meets (those away from it: see trace);
"leave" says when people leave, by the plan ("leaveLevel");
"groundAccuracy" how good its heights are taken to be and where that comes from;
"simulatedGround" the bags where the ground is not as the elevation data has it: the line sized on 500 grounds, each the
elevation data and an error it may have, which passes through the ground read in the field: bags enough on half of them
("oneInTwo") and on nine of ten ("nineInTen"), as used and expected, with the ground surveyed ("nineInTenSurveyed"), the
share of them on which a station is over its limit or short, and where to survey first ("surveyFirst");
"totalsGroundLow" and "totalsGroundHigh" the totals with all of the ground lower or higher by its accuracy;
"holding" what sliding and overturning calculate at, what seeps through it and what is to be pumped; "time" who builds what
when, and whether the top of levee stays ahead of the forecast that the plan holds in "time".
`;

/** `size`: a drawn line's heights, quantities and checks. */
export const size: Verb = {
  name: "size",
  summary: "heights, quantities and checks of the lines in a plan",
  help: HELP,
  run: runSize,
};

async function runSize(terminal: Terminal): Promise<string> {
  const { plan, engine, terrain, system } = await openedWithWays(
    "size",
    terminal,
    refuseWithoutLine,
  );
  const { lines } = await engine.size({ plan });
  for (const sentence of [...leftOut(lines, system), ...levelDoubts(lines, unitsOf(system))])
    terminal.say(sentence);
  const simulated: SizedLine[] = [];
  for (const line of lines) {
    const simulatedGround = isCounted(line)
      ? await engine.simulateGround({ plan, id: line.id })
      : null;
    simulated.push({ ...line, simulatedGround });
  }
  return toJson({
    leave: leaveWords(plan, system),
    leaveLevel: plan.leave ?? null,
    alternatives: simulated.map((line) => reported(line, { plan, lines, system })),
    terrain,
  });
}

function refuseWithoutLine({ alignments }: Plan): void {
  if (alignments.length === 0) throw refusal("plan/no-line", { toSize: true });
}

/** The line without the fine walk, in the order a reader wants it. */
function reported(
  line: SizedLine,
  { plan, lines, system }: { plan: Plan; lines: readonly SizedLine[]; system: UnitSystem },
) {
  const { id, name, kind, totals, stations, walk: _, ...rest } = line;
  const { holding, time, checks, ...plain } = rest;
  const verdict = overallVerdict({ line, checks: line.checks, traced: null });
  const { first, ...finding } = verdict;
  return {
    ...{ name, kind, complete: isWhole(line), mustFix: mustFixCount(line.checks) },
    verdict: {
      words: overallVerdictWords(verdict, system),
      first: first && { ...headlineWords(first, system), id: first.id, finding: first.finding },
      finding,
    },
    bagOrder: isCounted(line) ? bagOrder(totals) : null,
    plugs: plugRows(plan, line.checks, system),
    ...{ lengthM: totals.lengthM, totals, stations, id, ...plain },
    checks: checksReport(checks, system),
    holding: holding && { ...holding, profile: undefined },
    time: time && {
      ...time,
      wetH: undefined,
      notKnown: time.missing.length > 0 ? timeNotKnownWords(time.missing) : null,
      verdict: timeVerdictWords(finding.time, system),
      finding: finding.time,
      alternativesInTime: soonerLines(line, lines)
        .filter(({ verdict }) => verdict.kind === "in-time")
        .map((other) => other.line.name),
    },
  };
}
