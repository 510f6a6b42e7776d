import { HOUR_S } from "../constants.ts";
import { type Setting, setting } from "../setting.ts";
import type { LineCrew } from "./line-times.ts";
import type { WorkForce } from "./types.ts";

/** What a person types of the stock and of the work on many lines; null = not typed. SI. */
export interface StockFigures {
  readonly bags: number | null;
  readonly sandM3: number | null;
  readonly people: number | null;
  /** Hours from now, or from the start of work, to the first water. */
  readonly untilWaterH: number | null;
  /** Share of the people who are at work at a time. */
  readonly atWorkShare: number;
  readonly setUpH: number;
  /** Hours before the first water by which all must be closed. */
  readonly closeBeforeH: number;
  /** Person-hours of walking and moving for each line after a crew's first. */
  readonly moveHours: number;
  readonly mostOnOneLine: number;
  /** True when each line may be closed as late as its own first water allows, false when all are by the first. */
  readonly byOwnWater: boolean;
}

/** A figure that is typed. */
export type StockFigure = Exclude<keyof StockFigures, "byOwnWater">;

/** Every figure of the stock with its range; those that only a person can say have no default that counts. */
export const STOCK_SETTINGS: Readonly<Record<StockFigure, Setting>> = {
  bags: setting("the bags", "count", 0, [0, 100_000_000], "typed"),
  sandM3: setting("the sand", "load-volume", 0, [0, 10_000_000], "typed"),
  people: setting("the people", "count", 0, [0, 100_000], "typed"),
  untilWaterH: setting("the hours until the water", "hours", 0, [0, 2000], "typed"),
  atWorkShare: setting("the share at work", "share", 0.5, [0.05, 1], "assumed, no source"),
  setUpH: setting("the hours of setting up", "hours", 2, [0, 240], "assumed, no source"),
  closeBeforeH: setting("the hours kept before the water", "hours", 2, [0, 240], "judgement"),
  moveHours: setting("the hours of moving", "hours", 0, [0, 1000], "assumed, no source"),
  mostOnOneLine: setting("the people on one line", "count", 60, [1, 10_000], "judgement"),
};

/** Before anyone has typed anything. */
export const NO_STOCK: StockFigures = {
  ...{ bags: null, sandM3: null, people: null, untilWaterH: null },
  atWorkShare: STOCK_SETTINGS.atWorkShare.defaultSI,
  setUpH: STOCK_SETTINGS.setUpH.defaultSI,
  closeBeforeH: STOCK_SETTINGS.closeBeforeH.defaultSI,
  moveHours: STOCK_SETTINGS.moveHours.defaultSI,
  mostOnOneLine: STOCK_SETTINGS.mostOnOneLine.defaultSI,
  byOwnWater: true,
};

/** How many people there are, and the share of them who are at work at a time. */
export type Workers = Pick<WorkForce, "people" | "atWorkShare">;

/** Those of the stock; without any the plan's, all of whom are at work at a time. Null where nobody typed either. */
export function workersOf(
  { people, atWorkShare }: Pick<StockFigures, "people" | "atWorkShare">,
  ofPlan: number | null,
): Workers | null {
  if (people !== null) return { people, atWorkShare };
  return ofPlan === null ? null : { people: ofPlan, atWorkShare: 1 };
}

/** Whether anything is typed that a choice can be made with. */
export function hasStock({ bags, sandM3, people }: StockFigures): boolean {
  return bags !== null || sandM3 !== null || people !== null;
}

/** Who works how long; null where nobody said how many people there are. */
export function workForceOf(
  stock: StockFigures,
  workers: Workers | null,
  untilWaterH: number | null,
): WorkForce | null {
  const { setUpH, moveHours, mostOnOneLine } = stock;
  const untilH = untilCloseH(stock, untilWaterH);
  return workers && { ...workers, setUpH, moveHours, mostOnOneLine, untilH };
}

/** The same for the latest start of a line. */
export function lineCrewOf(
  { setUpH, closeBeforeH, mostOnOneLine, ...stock }: StockFigures,
  workers: Workers | null,
  startAtS: number | null,
  untilWaterH: number | null,
): LineCrew {
  return {
    atWork: workers && workers.people * workers.atWorkShare,
    ...{ mostOnOneLine, setUpH, closeBeforeH, startAtS },
    untilH: untilCloseH({ closeBeforeH, ...stock }, untilWaterH),
  };
}

/** Hours by which all lines must be closed; null where each has its own hour alone, or none is known. */
function untilCloseH(
  stock: Pick<StockFigures, "byOwnWater" | "closeBeforeH" | "untilWaterH">,
  untilWaterH: number | null,
): number | null {
  if (isByOwnWater(stock) || untilWaterH === null) return null;
  return Math.max(0, untilWaterH - stock.closeBeforeH);
}

/** Whether each line is closed by its own first water alone: an hour that is typed is for all. */
export function isByOwnWater({
  byOwnWater,
  untilWaterH,
}: Pick<StockFigures, "byOwnWater" | "untilWaterH">): boolean {
  return byOwnWater && untilWaterH === null;
}

/** Person-hours that there are: how many are at work at a time, for how long. */
export function hoursThereAre(force: WorkForce): {
  readonly available: number;
  readonly atWork: number;
  readonly hours: number;
} | null {
  if (force.untilH === null) return null;
  const hours = Math.max(0, force.untilH - force.setUpH);
  const atWork = force.people * force.atWorkShare;
  return { available: atWork * hours, atWork, hours };
}

/** Hours from a start to the earliest of some moments, seconds since 1970; null where either is not known. */
export function hoursUntil(startS: number | null, moments: Iterable<number | null>): number | null {
  if (startS === null) return null;
  let earliest = Number.POSITIVE_INFINITY;
  for (const atS of moments) if (atS !== null && atS < earliest) earliest = atS;
  return Number.isFinite(earliest) ? Math.max(0, (earliest - startS) / HOUR_S) : null;
}
