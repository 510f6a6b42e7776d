import type { RefusalTexts } from "./text.ts";

/** Parts of the program that are fetched when they are first needed. */
export type ProgramPart =
  | ("the printed pages" | "the printed list of rings" | "the field views" | "the lesson")
  | ("the view of all buildings" | "the rows of the worksheet" | "what a figure is made of")
  | ("the forces" | "drawing on the map" | "the comparison of two lines")
  | ("the calculation of distances" | "the simulation of the ground" | "the search for a line")
  | ("the check of many buildings" | "the choice of buildings")
  | ("the solver for the choice of buildings" | "the writer of this file format")
  | ("the writer of the stakes" | "the writer of codes" | "the reader of codes")
  | ("the reader of forecasts" | "the reader of shapes" | "the reader of shapefiles")
  | ("the reader of KML and GPX files" | "the reader of GeoParquet files")
  | ("the reader of FlatGeobuf files" | "the reader of zip files" | "the reader of Zstandard")
  | ("the reader of files at web addresses" | "the reader of ASCII grids" | "the LERC decoder")
  | ("the Zstandard decoder" | "a decoder of GeoTIFF blocks" | "the reader of .prj files")
  | ("the reader of VRT files" | "the list of map projections" | "the list of height references")
  | "the table of coordinate systems";

/** Why the program itself cannot go on. */
export const PROGRAM_REFUSALS = {
  "program/part-missing": ({ part }: { part: ProgramPart }) => [
    `A part of the program could not be loaded: ${part}.`,
    "Check the network and that the folder the page came from is still there, then try again. If it happens again, reload the page: your plan is saved.",
  ],
  "program/new-version": () => [
    "A new version of Drystead is here.",
    "Load it between two jobs. Until then you work on with this one; your plan is saved.",
  ],
  "engine/crashed": () => [
    "The part of the page that reads elevation data stopped and was started again.",
    "Your plan is saved. If it happens again, use smaller or coarser elevation data.",
  ],
} satisfies RefusalTexts;
