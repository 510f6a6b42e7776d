import { readFile } from "node:fs/promises";
import type { Stock } from "../../shared/buildings/types.ts";
import { type Given, type Refusal, refusal } from "../../shared/failure.ts";

const NOTHING_SAID: Stock = {
  ...{ bags: null, sandM3: null, sheetM2: null, people: null },
  ...{ mustDo: [], mustNot: [] },
};
const FIGURES = ["bags", "sandM3", "sheetM2", "people"] as const;
const LISTS = ["mustDo", "mustNot"] as const;

/**
 * What there is to build with, from a file like `{"bags": 120000, "sandM3": 688, "people": 180, "mustDo": []}`; parts
 * may be left out.
 * @throws Refusal `stock/...` for a part that is not known or not of its kind
 */
export async function readStock(path: string): Promise<Stock> {
  const text = await readFile(path, "utf8").catch(() => {
    throw refusal("stock/missing", { path });
  });
  return stockFrom(path, text);
}

/** The same from its text. */
export function stockFrom(path: string, text: string): Stock {
  const value = parsed(path, text);
  const stock: Record<string, unknown> = { ...NOTHING_SAID };
  for (const [name, part] of Object.entries(value)) {
    if (isOneOf(FIGURES, name)) stock[name] = figure(path, name, part);
    else if (isOneOf(LISTS, name)) stock[name] = ids(path, name, part);
    else throw bad({ path, fault: "unknown", known: [...FIGURES, ...LISTS], came: name });
  }
  const { mustDo, mustNot } = stock as unknown as Stock;
  const both = mustDo.find((id) => mustNot.includes(id));
  if (both !== undefined) throw bad({ path, fault: "in-both", id: both });
  return stock as unknown as Stock;
}

function isOneOf(names: readonly string[], name: string): boolean {
  return names.includes(name);
}

function parsed(path: string, text: string): object {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw bad({ path, fault: "not-json" });
  }
  if (value !== null && typeof value === "object" && !Array.isArray(value)) return value;
  throw bad({ path, fault: "no-object", came: JSON.stringify(value) });
}

function figure(path: string, name: string, part: unknown): number | null {
  if (part === null) return null;
  if (typeof part === "number" && part >= 0 && Number.isFinite(part)) return part;
  throw bad({ path, fault: "figure", part: name, came: JSON.stringify(part) });
}

function ids(path: string, name: string, part: unknown): string[] {
  const isId = (each: unknown) => typeof each === "string" || typeof each === "number";
  if (Array.isArray(part) && part.every(isId)) return part.map(String);
  throw bad({ path, fault: "list", part: name, came: JSON.stringify(part) });
}

function bad(given: Given<"stock/bad-part">): Refusal {
  return refusal("stock/bad-part", given);
}
