import type { SizeUnit } from "../imports/into-ways.ts";

/** What the shapes of a file are taken as. */
export type ShapeUse = "buildings" | "no-go" | "lines" | "culverts" | "roads" | "as-said";

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
  culverts: "Culverts",
  roads: "Exit roads",
  "as-said": "As the file says",
};

/** `culverts.zip: 12 culverts. Which columns say how low and how wide they are?` */
export function pipeColumnsLead(name: string, count: number): string {
  const which =
    count === 1
      ? "1 culvert. Which columns say how low and how wide it is?"
      : `${count} culverts. Which columns say how low and how wide they are?`;
  return `${name}: ${which}`;
}

/** What is picked for culverts of a file. */
export const PIPE_COLUMN_WORDS = {
  hint: "Inverts and sizes can also be typed later. Where none is given, the ground at the end is used.",
  firstInvert: "Invert, first end, from",
  lastInvert: "Invert, other end, from",
  invertsIn: "Inverts are in",
  size: "Inside diameter from",
  sizesIn: "Diameters are in",
  none: "no column",
  chooseUnit: "choose the unit",
  take: "Take them as culverts",
} as const;

export const SIZE_UNIT_WORDS: Readonly<Record<SizeUnit, string>> = {
  inch: "inches",
  foot: "feet",
  millimeter: "millimeters",
  meter: "meters",
};
