import type { Failure } from "../failure.ts";

/** What the shapes of a file are taken as. */
export type ShapeUse = "buildings" | "no-go" | "lines" | "as-said";

/** That shapes are in a grid which is not that of the elevation data. */
export function otherGrid(named: string | null, ground: string | null): Failure {
  const came = named === null ? "in a grid of their own" : `in ${named}`;
  const expected = ground === null ? "" : ` or in the grid of the elevation data, ${ground}`;
  return {
    code: "footprints/other-grid",
    message: `Expected shapes in longitude and latitude${expected}; these are ${came}, and none lies on the elevation data.`,
    remedy:
      "Export them again as GeoJSON in EPSG:4326 or as a zipped shapefile with its .prj, or open the elevation data of their place first.",
  };
}

/** Asks whether shapes that name another grid are in that of the elevation data, where some of them lie on it. */
export function gridQuestionWords(named: string, ground: string, onGround: number): string {
  const lie = onGround === 1 ? "1 lies" : `${onGround} lie`;
  return `The shapes say ${named}, the elevation data ${ground}. Taken as the grid of the elevation data, ${lie} on it.`;
}

/** Asks what the shapes of a file are. */
export function shapesQuestionWords(name: string, outlines: number, paths: number) {
  const counted = [
    ...(outlines > 0 ? [outlines === 1 ? "1 outline" : `${outlines} outlines`] : []),
    ...(paths > 0 ? [paths === 1 ? "1 line" : `${paths} lines`] : []),
  ];
  return { lead: `What is in ${name}?`, rest: `It has ${counted.join(" and ")} on this ground.` };
}

/** Buttons that answer the question; `as-said` where the file itself says what each shape is. */
export const SHAPE_USE_WORDS: Readonly<Record<ShapeUse, string>> = {
  buildings: "Buildings to pick from",
  "no-go": "No-go areas",
  lines: "Lines of the levee",
  "as-said": "As the file says",
};

/** That shapes cannot be taken for what the person says they are, or not yet. */
export function shapesRefused(why: "no-ground" | "no-outlines" | "no-lines"): Failure {
  switch (why) {
    case "no-ground":
      return {
        code: "shapes/no-ground",
        message: "Expected elevation data to put the shapes on; none is open.",
        remedy: "Open the elevation data of the place first, then this file again.",
      };
    case "no-outlines":
      return {
        code: "shapes/no-outlines",
        message: "Expected outlines; the file has only lines on this ground.",
        remedy: "Export the areas as polygons.",
      };
    case "no-lines":
      return {
        code: "shapes/no-lines",
        message: "Expected lines or outlines of levees; the file has none on this ground.",
        remedy: "Export the line as a line, or a ring as a polygon.",
      };
  }
}
