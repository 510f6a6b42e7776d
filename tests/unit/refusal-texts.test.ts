import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, it } from "vitest";
import { LATE_REFUSALS } from "../../shared/words/refusals/late.ts";
import { REFUSALS } from "../../shared/words/refusals.ts";
import { ROOT } from "../helpers/terminal.ts";

const IMPORTED = /(?:from|import\(|import)\s*"(\.[^"?]+)(?:\?[^"]*)?"/g;
const REFUSED = /\b(?:refusal|failureOf)\(\s*"([^"]+)"/g;

/** Reads WaterML on the page; the worker has the tree alone, for VRTs. */
const NOT_OF_WORKER = new Set(["forecast/xml"]);

/** Every module that a module imports, now or later, types left out. */
function reached(entry: string, seen = new Map<string, string>()): Map<string, string> {
  if (seen.has(entry) || !existsSync(entry)) return seen;
  const source = readFileSync(entry, "utf8").replace(/import type [^;]*;/g, "");
  seen.set(entry, source);
  for (const [, path] of source.matchAll(IMPORTED)) reached(join(dirname(entry), path!), seen);
  return seen;
}

it("the page has, or fetches, the text of every reason that the worker may give", () => {
  const modules = reached(join(ROOT, "workers/terrain.worker.ts"));
  const codes = [...modules.values()].flatMap((source) =>
    [...source.matchAll(REFUSED)].map(([, code]) => code!),
  );
  expect(new Set(codes).size).toBeGreaterThan(60);
  const withoutText = codes.filter((code) => !(code in REFUSALS) && !(code in LATE_REFUSALS));
  expect(withoutText.filter((code) => !NOT_OF_WORKER.has(code))).toEqual([]);
});

it("no two tables have a text for one code: the later of them would take its place", async () => {
  const folder = join(ROOT, "shared/words/refusals");
  const texts = new Map<string, Set<unknown>>();
  for (const file of readdirSync(folder)) {
    const tables = Object.entries((await import(join(folder, file))) as Record<string, object>);
    for (const [name, table] of tables) {
      if (!/_(?:REFUSALS|NOTES)$/.test(name)) continue;
      for (const [code, say] of Object.entries(table)) {
        texts.set(code, (texts.get(code) ?? new Set()).add(say));
      }
    }
  }
  expect(texts.size).toBeGreaterThan(200);
  expect([...texts].filter(([, says]) => says.size > 1).map(([code]) => code)).toEqual([]);
});
