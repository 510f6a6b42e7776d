import { signal } from "@preact/signals";
import type { UnitSystem } from "../../shared/units.ts";
import { recall, remember } from "../browser/remember.ts";

export type PaperName = "A4" | "Letter";

interface Paper {
  /** Width of the sheet, millimetres. */
  readonly widthMm: number;
  readonly heightMm: number;
}

const KEY = "drystead.paper";
/** Margin on every side, millimetres. */
const MARGIN_MM = 13;

const PAPERS: Readonly<Record<PaperName, Paper>> = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
};

/** The paper the pages are laid out for, remembered on this machine. */
export const paper = signal<PaperName>(recall(KEY, "Letter") === "A4" ? "A4" : "Letter");

export function setPaper(name: PaperName): void {
  paper.value = name;
  remember(KEY, name);
}

/** Width and height between the margins, millimetres. */
export function printable(name: PaperName): {
  readonly widthMm: number;
  readonly heightMm: number;
} {
  const { widthMm, heightMm } = PAPERS[name];
  return { widthMm: widthMm - 2 * MARGIN_MM, heightMm: heightMm - 2 * MARGIN_MM };
}

/** The page rule for the browser's printing. */
export function pageRule(name: PaperName): string {
  return (
    `@page { size: ${name} portrait; margin: ${MARGIN_MM}mm; ` +
    `@bottom-right { content: counter(page) " of " counter(pages); font: 8pt sans-serif; } }`
  );
}

/** When the pages were laid out, in words. */
export function printedNow(system: UnitSystem): string {
  const locale = system === "us" ? "en-US" : "en-GB";
  return new Date().toLocaleString(locale, {
    dateStyle: "medium",
    timeStyle: "short",
    hourCycle: "h23",
  });
}
