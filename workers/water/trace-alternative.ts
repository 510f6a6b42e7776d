import { layLine } from "../../shared/alignment.ts";
import { alternativeChecks } from "../../shared/checks-trace.ts";
import type { Alignment, Structure } from "../../shared/plan.ts";
import { isInside, planePolygon } from "../../shared/plane-polygon.ts";
import { aimsOfRing, isProtected } from "../../shared/protected.ts";
import {
  type DryVerdict,
  type FirstOver,
  HOLE_REACHED,
  type PipeCase,
  type Reached,
  type TracedAlternative,
  type TracedStructure,
  WATER,
} from "../../shared/water-types.ts";
import { dryVerdict } from "./dry-verdict.ts";
import { findWayIn } from "./find-way-in.ts";
import { allOpen, allPlugged, asDrawn, type OpenPipes } from "./grid-state.ts";
import { lineIfCulverts } from "./if-culverts.ts";
import { type LeveeWall, leveeWall } from "./levee-wall.ts";
import { outlineCells } from "./outline-cells.ts";
import { overtoppingOrder } from "./overtopping-order.ts";
import { findPassage, type Levee } from "./passage.ts";
import { riverStretches } from "./river-as-surveyed.ts";
import { elevationAt, type Footprint, type TraceContext } from "./trace-context.ts";
import { type FoundSill, type TracedState, traceState } from "./trace-state.ts";
import { behindLine } from "./wet-amounts.ts";

/** The plan's water without any levee, against which a levee is judged. */
export interface Before {
  readonly state: TracedState;
  readonly structures: readonly TracedStructure[];
  /** False where the cells are too large to show a levee: nothing is then said of what it keeps out. */
  readonly resolvesLines: boolean;
  /** The same ground with open pipes where there may be culverts; null where there are none. */
  readonly possible: TraceContext | null;
}

const NOT_RESOLVED: DryVerdict = {
  dry: null,
  notKnown: { because: "coarse-cells", at: null },
};

/** Whether anything is under water, known ground or not. */
function hasWater(codes: Uint8Array): boolean {
  return codes.some((code) => code === WATER || code === HOLE_REACHED);
}

/** An alternative's trace, and the codes of its water. */
export interface AlternativeTrace {
  readonly traced: TracedAlternative;
  readonly codes: Uint8Array;
  readonly wallCells: Int32Array;
}

/**
 * The water with one alternative built to its crest: is what it is for dry, how does water get in, and from
 * which level on.
 * @throws Refusal for a line without enough corners or length
 */
export function traceAlternative(
  context: TraceContext,
  alignment: Alignment,
  before: Before,
  river: Uint8Array | null,
): AlternativeTrace {
  const { plan, plane, grid, levelM, sources } = context;
  const line = layLine(alignment, plane);
  const wall = leveeWall(grid, line, plane);
  const levee: Levee = { line, wall, crestM: levelM + plan.water.freeboardM };
  const aims = aimsOf(context, alignment, wall);
  const state = traceState(context, aims, levee);
  const reached = state.found.map((found) => found.reached);
  const kept = behindLine(grid, before.state.codes, state.codes, wall.cells, levelM);
  const isAim = new Set(aims.map(({ id }) => id));
  const isStillWet = (index: number) =>
    context.footprints[index]!.cells.some((cell) => state.codes[cell] === WATER);
  const isAnyWater = hasWater(before.state.codes);
  const isJudged = isAnyWater && before.resolvesLines;
  const verdictOf = (found: readonly Reached[], isOpen: OpenPipes = asDrawn) => {
    const open = context.pipes.filter((pipe) => isOpen(pipe.traced));
    return before.resolvesLines ? dryVerdict(grid, wall, found, isAnyWater, open) : NOT_RESOLVED;
  };
  const caseOf = (pipes: OpenPipes): PipeCase => {
    const { found } = traceState(context, aims, levee, pipes);
    const firstOver = isJudged ? firstOverOf(context, levee, found) : null;
    return {
      ...verdictOf(
        found.map((each) => each.reached),
        pipes,
      ),
      firstOverM: firstOver?.elevationM ?? null,
      firstOverRiseM: firstOver?.riseM ?? null,
    };
  };
  const verdict = verdictOf(reached);
  const { id, name, kind } = alignment;
  const ring = kind === "ring" ? planePolygon(alignment.corners, plane) : null;
  const inside = sources.filter(({ at }) => ring && isInside(ring, ...plane.toPlane(at)));
  const traced: Omit<TracedAlternative, "checks"> = {
    ...{ id, name, kind },
    ...verdict,
    structures: reached,
    leftWet: before.structures
      .filter((each, index) => each.wet && !isAim.has(each.id) && isStillWet(index))
      .map((each) => each.id),
    wayIn: before.resolvesLines ? findWayIn(context, levee, state.found, before.state.found) : null,
    firstOver: isJudged ? firstOverOf(context, levee, state.found) : null,
    notReachedCells: kept.cells,
    notReachedAreaM2: kept.areaM2,
    notReachedVolumeM3: kept.volumeM3,
    overtopping: isJudged ? overtoppingOrder(context, levee) : [],
    sourcesInside: inside.map((source) => source.id),
    inWaterM: river ? riverStretches(wall, river, line) : [],
    pipes: context.pipes.length > 0 ? { plugged: caseOf(allPlugged), open: caseOf(allOpen) } : null,
    ifCulverts:
      verdict.dry && before.possible ? lineIfCulverts(before.possible, aims, reached, levee) : null,
  };
  const checks = alternativeChecks({
    plan,
    line: traced,
    structures: before.structures,
    pipes: context.pipes.map(({ traced }) => traced),
  });
  return { traced: { ...traced, checks }, codes: state.codes, wallCells: wall.cells };
}

/** What a line is for, of the buildings that are not left outside; a ring for none, its inside. */
function aimsOf(
  { grid, plan, plane, footprints }: TraceContext,
  alignment: Alignment,
  wall: LeveeWall,
): readonly Footprint[] {
  const ring = planePolygon(alignment.corners, plane);
  const isEnclosed = ({ outline }: Structure) =>
    outline.some((at) => isInside(ring, ...plane.toPlane(at)));
  const { structures } = plan;
  const isRing = alignment.kind === "ring";
  const aims = new Set(
    isRing ? aimsOfRing(structures, isEnclosed) : structures.filter(isProtected),
  );
  if (aims.size > 0 || !isRing) return footprints.filter((_, i) => aims.has(structures[i]!));
  const under = new Set(wall.cells);
  const cells = outlineCells(grid, alignment.corners).filter((cell) => !under.has(cell));
  return [{ id: alignment.id, name: "the ground inside", cells }];
}

function firstOverOf(
  context: TraceContext,
  levee: Levee,
  found: readonly FoundSill[],
): FirstOver | null {
  const { plan, levelM } = context;
  const known = found.filter(({ reached }) => reached.marginM !== null);
  if (known.length === 0) return null;
  const first = known.reduce((low, each) => (each.sill.levelM < low.sill.levelM ? each : low));
  const riseM = first.reached.marginM!;
  const passage = findPassage(context, levee.line, first.sill.cell);
  return {
    ...passage,
    structureId: first.footprint.id,
    elevationM: elevationAt(context, first.sill.cell, levelM + riseM),
    riseM,
    stageM: plan.water.by === "stage" ? plan.water.stageM + riseM : null,
    over: isOnCrest(levee, first.sill.cell) ? "crest" : "ground",
  };
}

function isOnCrest({ wall, crestM }: Levee, cell: number): boolean {
  const k = wall.cells.indexOf(cell);
  return k >= 0 && !(wall.groundM[k]! >= Math.fround(crestM));
}
