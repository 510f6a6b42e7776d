import type { TilesTogether } from "../../shared/ground-notes.ts";
import type { Mosaic, Part } from "./mosaic.ts";

/** Files that reach into each other by less do not overlap, cells of the common grid. */
const TOUCHING_CELLS = 0.01;
/** Cells that differ in size by less are of one size. */
const SAME_SIZE = 1e-3;

/** Which files of a mosaic have the finest cells, and what gives way to them. */
export function tilesTogether({ parts, grids: [finest, ...others] }: Mosaic): TilesTogether {
  const names = ({ tiles }: typeof finest) => tiles.map(({ raster }) => raster.name);
  const isCoarser = ({ place }: typeof finest) => place.across * place.down > (1 + SAME_SIZE) ** 2;
  return {
    finest: names(finest),
    coarser: others.filter(isCoarser).flatMap(names),
    offGrid: others.filter((grid) => !isCoarser(grid)).flatMap(names),
    overlap: parts.some((part, i) => parts.slice(0, i).some((before) => overlaps(part, before))),
  };
}

function overlaps(a: Part, b: Part): boolean {
  return (
    a.column + TOUCHING_CELLS < b.column + b.columns &&
    b.column + TOUCHING_CELLS < a.column + a.columns &&
    a.row + TOUCHING_CELLS < b.row + b.rows &&
    b.row + TOUCHING_CELLS < a.row + a.rows
  );
}
