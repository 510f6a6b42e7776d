import { signal } from "@preact/signals";
import { INCH_MM } from "../../shared/constants.ts";
import { recall, remember } from "../browser/remember.ts";

export type PaperName = "A4" | "Letter";

/** A size of paper and the margins left on it, millimetres. */
interface Paper {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly sideMm: number;
}

const KEY = "drystead.paper";
/** Width of what is printed, the same on both papers: 7.5 in. */
export const COLUMN_MM = 190.5;
/** Margin above and below, millimetres. */
const MARGIN_MM = 10.5;

const PAPERS: Readonly<Record<PaperName, Paper>> = {
  A4: { widthMm: 210, heightMm: 297, sideMm: (210 - COLUMN_MM) / 2 },
  Letter: { widthMm: 215.9, heightMm: 279.4, sideMm: (215.9 - COLUMN_MM) / 2 },
};

/** CSS pixels in an inch of paper. */
export const INCH_PX = 96;

/** A width on paper in CSS pixels. */
export function pxOf(mm: number): number {
  return (mm * INCH_PX) / INCH_MM;
}

/** The paper the pages are laid out for, remembered on this machine. */
export const paper = signal<PaperName>(recall(KEY, "Letter") === "A4" ? "A4" : "Letter");

export function setPaper(name: PaperName): void {
  paper.value = name;
  remember(KEY, name);
}

/** Size of a page, and its margins, as CSS. */
export function pageStyle(name: PaperName): { width: string; height: string; padding: string } {
  const { widthMm, heightMm, sideMm } = PAPERS[name];
  return {
    width: `${widthMm}mm`,
    height: `${heightMm}mm`,
    padding: `${MARGIN_MM}mm ${sideMm}mm`,
  };
}

/** Width of the paper, CSS pixels. */
export function paperWidthPx(name: PaperName): number {
  return pxOf(PAPERS[name].widthMm);
}

/** The page rule for the browser's printing: each page brings its own margins. */
export function pageRule(name: PaperName): string {
  return `@page { size: ${name} portrait; margin: 0; }`;
}
