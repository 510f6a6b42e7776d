import { readFile } from "node:fs/promises";
import type { Stock } from "../../shared/buildings/types.ts";
import { Refusal } from "../../shared/failure.ts";

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
    throw new Refusal(
      "stock/missing",
      `Expected a stock file; ${path} cannot be read.`,
      "Check the name and the folder.",
    );
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
    else throw bad(path, `a part ${[...FIGURES, ...LISTS].join(", ")}`, `"${name}"`);
  }
  const { mustDo, mustNot } = stock as unknown as Stock;
  const both = mustDo.find((id) => mustNot.includes(id));
  if (both !== undefined) {
    throw bad(path, "each building in mustDo or in mustNot alone", `"${both}" in both`);
  }
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
    throw bad(path, 'JSON like {"bags": 120000, "people": 180}', "text that is not JSON");
  }
  if (value !== null && typeof value === "object" && !Array.isArray(value)) return value;
  throw bad(path, 'an object like {"bags": 120000, "people": 180}', JSON.stringify(value));
}

function figure(path: string, name: string, part: unknown): number | null {
  if (part === null) return null;
  if (typeof part === "number" && part >= 0 && Number.isFinite(part)) return part;
  throw bad(path, `${name} as a number of 0 or more`, JSON.stringify(part));
}

function ids(path: string, name: string, part: unknown): string[] {
  const isId = (each: unknown) => typeof each === "string" || typeof each === "number";
  if (Array.isArray(part) && part.every(isId)) return part.map(String);
  throw bad(path, `${name} as a list of ids of buildings`, JSON.stringify(part));
}

function bad(path: string, expected: string, came: string): Refusal {
  return new Refusal(
    "stock/bad-part",
    `${path}: expected ${expected}; came ${came.slice(0, 100)}.`,
    "Correct it, or leave that part out.",
  );
}
