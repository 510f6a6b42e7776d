import type { Plan } from "../../shared/plan.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { TracedAlternative, WaterTrace } from "../../shared/water-types.ts";
import { floorWords } from "../../shared/words/buildings.ts";
import { plugRows } from "../../shared/words/pipes.ts";
import { dryNotKnownWords } from "../../shared/words/terminal.ts";
import { toJson } from "./json.ts";
import { MARK_HELP } from "./marks.ts";
import { openedWithWays } from "./opened-plan.ts";
import { checksReport, UNITS_HELP } from "./report-units.ts";
import type { Terminal, Verb } from "./verb.ts";
import { WAYS_HELP, WAYS_USAGE } from "./ways.ts";

const HELP = `drystead trace PLAN.geojson --terrain RASTER... [--vertical-unit m|ft|us-ft]
               [--no-data VALUE...] [--keep-value VALUE...] [--units us|metric]
               ${WAYS_USAGE}

Where the water of the plan's forecast really goes, as JSON on standard output: connected water, whether it
reaches each building and from which level on, without a levee and with each alternative built to its top.

  PLAN.geojson       a plan file; it comes before --terrain
  --terrain RASTER   one raster, or the tiles of one survey; GeoTIFF or Esri ASCII grid,
                     a file or a web address (https://...), of which only the parts needed are read
  --vertical-unit    unit of the raster's heights, when the file does not state it
${MARK_HELP}
${WAYS_HELP}
${UNITS_HELP}

Water comes from the Point features of role "source"; without any, from every low edge of the ground. A cell
is under water when its ground is strictly below the surface and joined to a source over such cells, side by
side or corner to corner. An open culvert (a LineString of role "culvert") or drain (a Point of role "drain")
lets water through above the higher of its inverts, or the ground at a drain. "possibleCulverts" are places near
the plan where the ground looks as it does at a culvert (a sag, a bank, a lower channel behind it): look there; no
water goes through them before one is drawn. A hole in the data lets water through; where that alone decides, or where a line
runs over a hole, "dry" is null, and "notKnown" says why. A sill is the lowest level at which water
reaches a place: it must be higher. "pipes" says of each culvert and drain whether water passes and above which level;
the "pipes" of a line what it comes to with all of them plugged and all open, and "plugs" the plugs to get for those
that alone bring the water in (those that the line itself meets: see size). All figures are meters, square meters and cubic meters.
`;

/** `trace`: connected water and what it reaches. */
export const trace: Verb = {
  name: "trace",
  summary: "where the water goes: what it reaches, without a levee and with each line",
  help: HELP,
  run: runTrace,
};

async function runTrace(terminal: Terminal): Promise<string> {
  const { plan, engine, system } = await openedWithWays("trace", terminal);
  const traced = await engine.traceWater({ plan });
  for (const each of traced.alternatives) {
    if (each.notKnown) terminal.say(dryNotKnownWords(each));
  }
  return toJson(reported(traced, plan, system));
}

/** The trace without its picture, the keys that others rely on first. */
function reported(traced: WaterTrace, plan: Plan, system: UnitSystem) {
  const { water, structures, alternatives, sources, pipes, possibleCulverts, roads, checks } =
    traced;
  const named = structures.map((each) => {
    const { id, name, wet, sillM, sillAt, ...rest } = each;
    const floor = floorWords(each, system);
    return { ...{ name, wet, sillM, sillAt, id }, ...rest, floor };
  });
  return {
    ...{ water, structures: named },
    alternatives: alternatives.map((each) => line(each, plan, system)),
    ...{ sources, pipes, possibleCulverts, roads, checks: checksReport(checks, system) },
  };
}

function line(traced: TracedAlternative, plan: Plan, system: UnitSystem) {
  const { id, name, kind, dry, notKnown, wayIn, firstOver, checks, ...rest } = traced;
  return {
    ...{ name, dry },
    entersAt: wayIn?.at ?? null,
    firstOverM: firstOver?.elevationM ?? null,
    firstOverAt: firstOver?.at ?? null,
    ...{ id, kind, notKnown, wayIn, firstOver },
    ...rest,
    plugs: plugRows(plan, checks, system),
    checks: checksReport(checks, system),
  };
}
