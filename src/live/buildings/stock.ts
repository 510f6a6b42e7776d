import { computed, type ReadonlySignal, signal } from "@preact/signals";
import {
  NO_STOCK,
  STOCK_SETTINGS,
  type StockFigure,
  type StockFigures,
} from "../../../shared/buildings/stock-settings.ts";
import type { Stock } from "../../../shared/buildings/types.ts";
import { recall, remember } from "../../browser/remember.ts";
import { listed } from "./listed.ts";

const KEY = "drystead.stock";

/** What there is to build with, as typed; kept on this machine. */
export const stock = signal<StockFigures>(kept());
/** Whether a person ticked a building, or took its tick away, by building. */
export const byHand = signal<ReadonlyMap<string, boolean>>(new Map());

export function setStock(figure: StockFigure, value: number | null): void {
  keep({ ...stock.peek(), [figure]: value ?? NO_STOCK[figure] });
}

export function setByOwnWater(byOwnWater: boolean): void {
  keep({ ...stock.peek(), byOwnWater });
}

function keep(next: StockFigures): void {
  stock.value = next;
  remember(KEY, JSON.stringify(next));
}

/** Ticks buildings by hand, or takes their ticks away. */
export function tick(ids: readonly string[], isRinged: boolean): void {
  const next = new Map(byHand.peek());
  for (const id of ids) next.set(id, isRinged);
  byHand.value = next;
}

export function clearByHand(): void {
  byHand.value = new Map();
}

/** The stock with the buildings that must be ringed, and those that must not: a tick set by hand counts before a priority. */
export const stockNow: ReadonlySignal<Stock> = computed(() => {
  const { bags, sandM3, people } = stock.value;
  const hand = byHand.value;
  const [mustDo, mustNot]: [string[], string[]] = [[], []];
  for (const { id, priority } of listed.value?.buildings ?? []) {
    const ticked = hand.get(id);
    if (ticked ?? priority === "first") mustDo.push(id);
    else if (ticked === false || priority === "never") mustNot.push(id);
  }
  return { bags, sandM3, sheetM2: null, people, mustDo, mustNot };
});

/** The figures of a former visit, as far as they are in range. */
function kept(): StockFigures {
  const found: Record<string, unknown> = parsed(recall(KEY, "{}"));
  const figures = Object.entries(STOCK_SETTINGS).map(([name, { lowSI, highSI }]) => {
    const value = found[name];
    const isGood = typeof value === "number" && value >= lowSI && value <= highSI;
    return [name, isGood ? value : NO_STOCK[name as StockFigure]];
  });
  return { ...Object.fromEntries(figures), byOwnWater: found.byOwnWater !== false };
}

function parsed(text: string): Record<string, unknown> {
  try {
    return { ...JSON.parse(text) };
  } catch {
    return {};
  }
}
