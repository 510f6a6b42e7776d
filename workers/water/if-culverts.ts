import type { FoundCandidates } from "../../shared/pipes/candidates.ts";
import { drawnCulvert } from "../../shared/pipes/drawn-pipes.ts";
import type { LonLat } from "../../shared/plan.ts";
import type { Reached, TracedLineIfCulverts } from "../../shared/water-types.ts";
import { findSills } from "./find-sills.ts";
import type { GridState } from "./grid-state.ts";
import { elevationAt, type Footprint, type TraceContext, traceContext } from "./trace-context.ts";

/** Differences of a level below this are none, metres. */
const SAME_M = 0.005;

/**
 * The same plan with an open pipe at every place where there may be one and nobody has said that there is none; null
 * where there is no such place. What it comes to is said beside what is counted, never in its place.
 */
export function ifCulverts(
  context: TraceContext,
  { found }: FoundCandidates,
  middle: LonLat,
): TraceContext | null {
  const { plan, ground } = context;
  const toLook = (plan.possibleCulverts ?? []).filter(({ answer }) => answer === "look");
  const paths = [...found.map(({ ends }) => ends), ...toLook.map(({ path }) => path)];
  if (paths.length === 0) return null;
  const culverts = [...(plan.culverts ?? [])];
  for (const path of paths) culverts.push(drawnCulvert(path, culverts));
  return traceContext({ ...plan, culverts }, ground, middle);
}

/** Ids of places that are dry as traced, and under water at the sized-for level with those pipes. */
export function wetIfCulverts(
  possible: TraceContext,
  footprints: readonly Footprint[],
  reached: readonly Reached[],
  levee: GridState["levee"],
): ReadonlySet<string> {
  return new Set(
    sillsIf(possible, footprints, reached, levee)
      .filter(({ sill }) => sill.levelM < possible.levelM)
      .map(({ id }) => id),
  );
}

/** What those pipes do to a line that keeps out all water as traced; null where they change nothing. */
export function lineIfCulverts(
  possible: TraceContext,
  footprints: readonly Footprint[],
  reached: readonly Reached[],
  levee: NonNullable<GridState["levee"]>,
): TracedLineIfCulverts | null {
  const { levelM } = possible;
  const lowest = (levels: readonly number[]) => Math.min(Number.POSITIVE_INFINITY, ...levels);
  const sills = sillsIf(possible, footprints, reached, levee);
  const first = sills.reduce<(typeof sills)[number] | null>(
    (low, each) => (low && low.sill.levelM <= each.sill.levelM ? low : each),
    null,
  );
  const asTracedM = lowest(
    reached.flatMap(({ marginM }) => (marginM === null ? [] : levelM + marginM)),
  );
  if (!first || !(first.sill.levelM < asTracedM - SAME_M)) return null;
  return {
    reaches: sills.filter(({ sill }) => sill.levelM < levelM).map(({ id }) => id),
    elevationM: elevationAt(possible, first.sill.cell, first.sill.levelM),
    riseM: first.sill.levelM - levelM,
  };
}

function sillsIf(
  possible: TraceContext,
  footprints: readonly Footprint[],
  reached: readonly Reached[],
  levee: GridState["levee"],
) {
  const dry = footprints.filter(({ id }) => reached.some((each) => each.id === id && !each.wet));
  if (dry.length === 0) return [];
  return findSills(possible, dry, { levee, holesHold: false })
    .sills.map((sill, k) => ({ id: dry[k]!.id, sill }))
    .filter(({ sill }) => sill.cell >= 0 && Number.isFinite(sill.levelM));
}
