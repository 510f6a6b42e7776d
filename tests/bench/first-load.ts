import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { BenchRow } from "./row.ts";

const PROMISED_KB = 600;
const DIST = fileURLToPath(new URL("../../dist/", import.meta.url));

/** The page, our worker, MapLibre's, and what the worker fetches for the demo's line once the plan rests. */
const FIRST = ["index", "terrain.worker", "worker", "simulate-ground"];
/** What the page fetches right after its first picture: what moves corners, what is in the worksheet's rows. */
const AFTERWARDS = ["drawing", "row-bodies"];

/**
 * The scripts of the built page that are fetched until the demo is sized and drawn, each once, as gzip sends them,
 * and those that come right after: by their imports, so that no machine's speed has a part in it.
 */
export async function rows(): Promise<readonly BenchRow[]> {
  const scripts = readdirSync(`${DIST}assets`).filter((name) => name.endsWith(".js"));
  const named = (name: string) => {
    const found = scripts.filter((each) => new RegExp(`^${name}-[\\w-]{8}\\.js$`).test(each));
    const [only] = found;
    if (!only || found.length > 1) throw new Error(`Expected one script named ${name}: ${found}.`);
    return only;
  };
  const first = withImports(FIRST.map(named), new Set());
  const after = withImports(AFTERWARDS.map(named), first);
  return [
    ...list("first load until the demo is drawn, all scripts", first, PROMISED_KB),
    ...list("right after it, to move corners and open rows", after, null),
  ];
}

/** Scripts and all that they import, but for what is known. */
function withImports(names: readonly string[], known: ReadonlySet<string>): Set<string> {
  const found = new Set<string>();
  const left = [...names];
  for (let name = left.pop(); name !== undefined; name = left.pop()) {
    if (known.has(name) || found.has(name)) continue;
    found.add(name);
    const code = readFileSync(`${DIST}assets/${name}`, "utf8");
    for (const [, other] of code.matchAll(/(?:\bfrom|\bimport)\s*"\.\/([^"]+\.js)"/g)) {
      left.push(other!);
    }
  }
  return found;
}

function list(title: string, names: ReadonlySet<string>, promisedKB: number | null): BenchRow[] {
  const sizes = [...names].map((name) => ({
    name,
    kB: gzipSync(readFileSync(`${DIST}assets/${name}`), { level: 9 }).length / 1000,
  }));
  sizes.sort((a, b) => b.kB - a.kB);
  const total = sizes.reduce((sum, { kB }) => sum + kB, 0);
  return [
    row(title, total, promisedKB),
    ...sizes.map(({ name, kB }) => row(`  ${name}`, kB, null)),
  ];
}

function row(name: string, kB: number, promisedMs: number | null): BenchRow {
  return { name, ms: kB, unit: "kB", peer: null, peerMs: null, promisedMs };
}
