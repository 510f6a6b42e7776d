import type { ThroughPipe } from "../../shared/water-types.ts";
import { findSills } from "./find-sills.ts";
import { allPlugged, type GridState, inState, type OpenPipes } from "./grid-state.ts";
import type { Sill } from "./sill-search.ts";
import { elevationAt, type Footprint, type TraceContext } from "./trace-context.ts";
import { pipesOnWay, wayIn } from "./way-in.ts";

/** A state of the pipes, holes letting water through. */
interface PipeState {
  readonly levee: GridState["levee"];
  readonly pipes: OpenPipes;
}

/**
 * What the open pipes do to each place that is to stay dry; null for those that get water over ground and levee as
 * early as through any pipe.
 * @param sills of the places in that state
 */
export function throughPipes(
  context: TraceContext,
  footprints: readonly Footprint[],
  sills: readonly Sill[],
  { levee, pipes }: PipeState,
): readonly (ThroughPipe | null)[] {
  const open = context.pipes.filter(({ traced, link }) => link !== null && pipes(traced));
  if (open.length === 0) return footprints.map(() => null);
  const sillsWith = (some: OpenPipes) =>
    findSills(context, footprints, { levee, holesHold: false, pipes: some }).sills;
  const plugged = sillsWith(allPlugged);
  const isAllKnown = open.every(({ traced }) => traced.isKnown);
  const known = isAllKnown ? sills : sillsWith((pipe) => pipe.isKnown && pipes(pipe));
  return footprints.map((footprint, i) => {
    const [sill, pluggedSill] = [sills[i]!, plugged[i]!];
    if (sill.cell < 0 || !(sill.levelM < pluggedSill.levelM)) return null;
    const { levelM } = context;
    const alone = sill.levelM < levelM && pluggedSill.levelM >= levelM;
    const goalM = alone ? levelM : pluggedSill.levelM;
    return {
      ids: [...decidingPipes(context, footprint, { levee, pipes }, goalM)],
      alone,
      isKnown: alone ? known[i]!.levelM < levelM : known[i]!.levelM === sill.levelM,
      pluggedSillM: Number.isFinite(pluggedSill.levelM)
        ? elevationAt(context, pluggedSill.cell, pluggedSill.levelM)
        : null,
    };
  });
}

/** Pipes that need a plug, found path by path, until the sill of a place is at the level wanted. */
function decidingPipes(
  context: TraceContext,
  footprint: Footprint,
  { levee, pipes }: PipeState,
  goalM: number,
): ReadonlySet<string> {
  const found = new Set<string>();
  for (let before = -1; before < found.size; ) {
    before = found.size;
    const state: GridState = {
      ...{ levee, holesHold: false },
      pipes: (pipe) => pipes(pipe) && !found.has(pipe.id),
    };
    const sill = findSills(context, [footprint], state).sills[0]!;
    if (sill.levelM >= goalM) break;
    inState(context, state, (from) => {
      const cells = wayIn(context.grid, from, footprint.cells, sill.levelM);
      for (const { pipeId } of pipesOnWay(from, cells)) found.add(pipeId);
    });
  }
  return found;
}
