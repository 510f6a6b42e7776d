import { listed } from "./list.ts";

/** How several files of elevation data lie to each other, by their names. */
export interface TilesTogether {
  readonly finest: readonly string[];
  /** With larger cells than the finest. */
  readonly coarser: readonly string[];
  /** With cells as large as the finest, beside their grid by a part of a cell. */
  readonly offGrid: readonly string[];
  readonly overlap: boolean;
}

/** What is to be known of files that are open together. */
export function tileWords({ finest, coarser, offGrid, overlap }: TilesTogether): string[] {
  const notes: string[] = [];
  if (coarser.length > 0) {
    const counts = overlap ? " Where files overlap, the finer one with data counts." : "";
    notes.push(
      `Cells of several sizes: ${named(finest)} ${has(finest)} finer cells than ${named(coarser)}.${counts} Heights of the coarser are interpolated between its cells.`,
    );
  } else if (overlap) notes.push("Files overlap: where they do, the first one with data counts.");
  if (offGrid.length > 0) {
    notes.push(
      `${named(offGrid)} ${offGrid.length === 1 ? "is" : "are"} off the grid of ${named(finest)} by part of a cell: heights are interpolated.`,
    );
  }
  return notes;
}

/** What is to be known of a VRT: which files it does not name. */
export function vrtWords(vrt: string | null, unnamed: readonly string[]): string[] {
  if (vrt === null) return [];
  const left = unnamed.length === 1 ? "is" : "are";
  return [
    `"${vrt}" says which files count; of files with cells of one size, the later covers the earlier, as in a GIS.`,
    ...(unnamed.length > 0 ? [`${named(unnamed)} ${left} not named in it and not read.`] : []),
  ];
}

const MOST_NAMED = 3;

/** `"a.tif", "b.tif" and 4 more`. */
function named(names: readonly string[]): string {
  const quoted = names.slice(0, MOST_NAMED).map((name) => `"${name}"`);
  const more = names.length - quoted.length;
  return listed(more > 0 ? [...quoted, `${more} more`] : quoted);
}

function has(names: readonly string[]): string {
  return names.length === 1 ? "has" : "have";
}
