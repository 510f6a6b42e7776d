import type { Culvert, Drain, LonLat } from "../../shared/plan.ts";
import type { TracedPipe } from "../../shared/water-types.ts";
import type { TraceContext } from "./trace-context.ts";
import {
  cellAt,
  cellIndex,
  columnOf,
  type Link,
  neighbourSteps,
  rowOf,
  type WaterCells,
  type WaterGrid,
} from "./water-grid.ts";

/** A culvert or drain on the grid. */
export interface Pipe {
  readonly traced: TracedPipe;
  /** Null where it leads nowhere: a drain that does not join outside, a pipe with both ends in one cell. */
  readonly link: Link | null;
}

/** What a culvert or drain is taken from: the grid, over the falling surface, and how much it falls. */
type Place = Pick<TraceContext, "plan" | "ground" | "grid" | "from"> & {
  /** How much higher the water stands at a cell than at the gauge, metres. */
  readonly dropAt: (cell: number) => number;
};

/** Every culvert and drain of the plan, in its order. */
export function pipesOf(place: Place): Pipe[] {
  const { culverts = [], drains = [] } = place.plan;
  return [
    ...culverts.map((culvert) => culvertPipe(place, culvert)),
    ...drains.map((drain) => drainPipe(place, drain)),
  ];
}

/** Where water comes from, with the pipes that are open: all but those named. */
export function withOpenPipes(
  from: WaterCells,
  pipes: readonly Pipe[],
  isOpen: (pipe: TracedPipe) => boolean,
): WaterCells {
  const links = pipes.flatMap(({ traced, link }) => (link && isOpen(traced) ? [link] : []));
  return links.length > 0 ? { ...from, links } : from;
}

/**
 * Water passes a culvert above the higher of its two inverts, the ground at an end where none is typed. Where
 * that ground is not known the end counts as low, and the pipe as not known.
 */
function culvertPipe(place: Place, { id, name, path, invertsM, plugged }: Culvert): Pipe {
  const ends = [
    endOf(place, path[0]!, path[1]!, invertsM[0]),
    endOf(place, path.at(-1)!, path.at(-2)!, invertsM[1]),
  ] as const;
  const [a, b] = ends;
  const levelM = Math.max(a.levelM, b.levelM);
  const isKnown = ends.every((end) => end.invertM !== null);
  return {
    traced: {
      ...{ id, name, kind: "culvert", plugged, isKnown },
      at: a.levelM >= b.levelM ? path[0]! : path.at(-1)!,
      invertsM: [a.invertM, b.invertM],
      passesAboveM: isKnown ? Math.max(a.invertM!, b.invertM!) : null,
      groundM: null,
    },
    link: a.cell === b.cell ? null : linkOf(id, a.cell, b.cell, levelM),
  };
}

/** Water comes up a drain that joins outside when it stands higher there than the ground at the drain. */
function drainPipe(place: Place, { id, name, kind, at, joinsOutside, plugged }: Drain): Pipe {
  const { grid, ground } = place;
  const cell = cellAt(grid, at);
  const groundM = cell < 0 ? Number.NaN : ground.heightM[cell]!;
  const isLeading = joinsOutside !== false && cell >= 0;
  const isKnown = joinsOutside === false || (joinsOutside === true && Number.isFinite(groundM));
  const levelM = Number.isFinite(groundM) ? grid.heightM[cell]! : Number.NEGATIVE_INFINITY;
  return {
    traced: {
      ...{ id, name, kind, at, plugged, isKnown },
      invertsM: null,
      passesAboveM: joinsOutside === true && Number.isFinite(groundM) ? groundM : null,
      groundM: Number.isFinite(groundM) ? groundM : null,
    },
    link: isLeading ? linkOf(id, outsideCell(place), cell, levelM) : null,
  };
}

/** Levels take the precision of the grid's heights, so that both compare alike. */
function linkOf(pipeId: string, a: number, b: number, levelM: number): Link {
  return { pipeId, a, b, levelM: Math.fround(levelM) };
}

/** A cell with water from outside: the frame where water comes over the edge, else the lowest source. */
function outsideCell({ from, grid }: Place): number {
  if (from.edge || from.cells.length === 0) return 0;
  return from.cells.reduce((low, cell) => (grid.heightM[cell]! < grid.heightM[low]! ? cell : low));
}

interface PipeEnd {
  readonly cell: number;
  /** Null where it is neither typed nor the ground known. */
  readonly invertM: number | null;
  /** The invert over the heights of the grid; -Infinity where it is not known. */
  readonly levelM: number;
}

/**
 * One end of a culvert: the lowest known cell of those it lies in and beside, never back toward the pipe, since a
 * click seldom hits the ditch's bottom. An end off the ground is in the frame.
 */
function endOf(place: Place, at: LonLat, before: LonLat, typedM: number | null): PipeEnd {
  const { ground, dropAt } = place;
  const own = cellAt(ground, at);
  const cell = own < 0 ? outsideCell(place) : lowestBeside(ground, own, at, before);
  const groundM = own < 0 || Number.isNaN(ground.heightM[own]!) ? null : ground.heightM[cell]!;
  const invertM = typedM ?? (groundM !== null && Number.isFinite(groundM) ? groundM : null);
  const levelM =
    invertM === null ? Number.NEGATIVE_INFINITY : invertM - (own < 0 ? 0 : dropAt(cell));
  return { cell, invertM, levelM };
}

function lowestBeside(ground: WaterGrid, own: number, at: LonLat, before: LonLat): number {
  const [x, y] = ground.place.toCell(at[0], at[1]);
  const [backX, backY] = ground.place.toCell(before[0], before[1]);
  const isOutward = (cell: number) =>
    (columnOf(ground, cell) - Math.round(x)) * (x - backX) +
      (rowOf(ground, cell) - Math.round(y)) * (y - backY) >=
    0;
  let lowest = own;
  for (const step of neighbourSteps(ground.width)) {
    const next = own + step;
    const isOnGround = cellIndex(ground, columnOf(ground, next), rowOf(ground, next)) === next;
    const heightM = ground.heightM[next]!;
    if (!isOnGround || !isOutward(next) || !Number.isFinite(heightM)) continue;
    if (heightM < ground.heightM[lowest]!) lowest = next;
  }
  return lowest;
}
