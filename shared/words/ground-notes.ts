import type { FileNote, GroundNote, TilesTogether } from "../ground-notes.ts";
import { HEIGHT_UNIT_WORDS } from "./ground-line.ts";
import { listed } from "./list.ts";

/** What is to be known of elevation data that is open. */
export function groundNoteWords(note: GroundNote): string {
  switch (note.kind) {
    case "of-files":
      return `${manyNamed(note.names)}: ${fileNoteWords(note.note)}.`;
    case "vrt":
      return vrtWords(note.vrt, note.unnamed);
    case "tiles":
      return tileWords(note);
    case "loose":
      return `"${note.name}" belongs to none of the rasters by name and is not used.`;
  }
}

function fileNoteWords(note: FileNote): string {
  switch (note.kind) {
    case "bands": {
      const bands = `${note.bands} bands: heights are read from the first`;
      return note.vrt === null ? bands : `"${note.vrt}" has ${bands}`;
    }
    case "rasters":
      return `${note.rasters} rasters: only the first is read`;
    case "unit-stated":
      return `heights are in ${HEIGHT_UNIT_WORDS[note.stated]} as the file states, not in the ${HEIGHT_UNIT_WORDS[note.chosen]} chosen in Elevation data`;
    case "strays":
      return `cells with ${note.values.join(", ")} are counted as no elevation data: no ground has that height`;
  }
}

function manyNamed([first, ...others]: readonly string[]): string {
  return others.length === 0 ? `"${first}"` : `"${first}" and ${others.length} more`;
}

function tileWords({ finest, coarser, offGrid, overlap }: TilesTogether): string {
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
  return notes.join(" ");
}

function vrtWords(vrt: string, unnamed: readonly string[]): string {
  const counts = `"${vrt}" says which files count; of files with cells of one size, the later covers the earlier, as in a GIS.`;
  if (unnamed.length === 0) return counts;
  const left = unnamed.length === 1 ? "is" : "are";
  return `${counts} ${named(unnamed)} ${left} not named in it and not read.`;
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
