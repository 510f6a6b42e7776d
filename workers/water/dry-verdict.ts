import type { DryVerdict, Reached } from "../../shared/water-types.ts";
import type { LeveeWall } from "./levee-wall.ts";
import type { Pipe } from "./pipe-links.ts";
import { lonLatOf, type WaterGrid } from "./water-grid.ts";

/**
 * Whether everything a line is for stays dry. Not known where only missing elevation data decides: water that
 * comes over a hole alone, or a line that itself runs over a hole or off the data, and where it comes through a pipe
 * that is not known alone; nor where no ground at all is
 * under water, for then water and elevation data do not belong together.
 */
export function dryVerdict(
  grid: WaterGrid,
  wall: LeveeWall,
  reached: readonly Reached[],
  isAnyWater: boolean,
  openPipes: readonly Pipe[],
): DryVerdict {
  if (reached.some((each) => isWet(each))) return { dry: false, notKnown: null };
  const unknown = (because: NonNullable<DryVerdict["notKnown"]>["because"]) => ({
    because,
    at: null,
  });
  if (reached.length === 0) return { dry: null, notKnown: unknown("no-building") };
  if (!isAnyWater) return { dry: null, notKnown: unknown("no-water") };
  const doubtful = reached.find(({ throughPipe }) => isByDoubtfulPipe(throughPipe));
  const pipe =
    openPipes.find(({ traced }) => doubtful?.throughPipe?.ids.includes(traced.id)) ??
    openPipes.find((each) => endsUnder(each, wall));
  if (pipe) return { dry: null, notKnown: { because: "pipe-not-known", at: pipe.traced.at } };
  const hole = reached.find(({ throughHole }) => throughHole?.alone)?.throughHole;
  if (hole) return { dry: null, notKnown: { because: "hole-in-the-way", at: hole.at } };
  if (reached.some(({ wet }) => wet === null)) {
    return { dry: null, notKnown: unknown("building-off-data") };
  }
  const gap = wall.groundM.findIndex((groundM) => !Number.isFinite(groundM));
  if (gap >= 0) {
    const at = lonLatOf(grid, wall.cells[gap]!);
    return { dry: null, notKnown: { because: "hole-under-line", at } };
  }
  if (wall.runsOff) return { dry: null, notKnown: unknown("hole-under-line") };
  return { dry: true, notKnown: null };
}

/** Whether water reaches a building over ground, and through pipes, that are known. */
export function isWet({ wet, throughHole, throughPipe }: Reached): boolean {
  return wet === true && !throughHole?.alone && !isByDoubtfulPipe(throughPipe);
}

function isByDoubtfulPipe(through: Reached["throughPipe"]): boolean {
  return through?.alone === true && !through.isKnown;
}

/** An open pipe with an end under the levee itself: where its water comes out is not known. */
function endsUnder({ link }: Pipe, wall: LeveeWall): boolean {
  return link !== null && [link.a, link.b].some((cell) => wall.cells.includes(cell));
}
