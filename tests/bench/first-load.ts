import { gzipSync } from "node:zlib";
import { openHouse } from "../helpers/harness.ts";
import { planIsSized } from "../helpers/screen.ts";
import type { BenchRow } from "./row.ts";

const PROMISED_KB = 600;

/**
 * The scripts that the built page fetches until the demo is sized and its corners can be dragged, each once, as
 * gzip sends them. Nothing is cached before.
 */
export async function rows(): Promise<readonly BenchRow[]> {
  const house = await openHouse();
  const visit = await house.visit();
  try {
    await planIsSized(visit.page);
    const addresses = await visit.page.evaluate(() =>
      performance.getEntriesByType("resource").map(({ name }) => name),
    );
    const workers = visit.page.workers();
    const more = await Promise.all(
      workers.map((worker) =>
        worker.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name)),
      ),
    );
    const scripts = [...new Set([...addresses, ...more.flat()])].filter((name) =>
      new URL(name).pathname.endsWith(".js"),
    );
    const sizes = await Promise.all(
      scripts.map(async (address) => {
        const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer());
        return {
          name: address.slice(address.lastIndexOf("/") + 1),
          kB: gzipSync(bytes, { level: 9 }).length / 1000,
        };
      }),
    );
    sizes.sort((a, b) => b.kB - a.kB);
    const total = sizes.reduce((sum, { kB }) => sum + kB, 0);
    return [
      row("first load, all scripts", total, PROMISED_KB),
      ...sizes.map(({ name, kB }) => row(`  ${name}`, kB, null)),
    ];
  } finally {
    await visit.leave();
    await house.close();
  }
}

function row(name: string, kB: number, promisedMs: number | null): BenchRow {
  return { name, ms: kB, unit: "kB", peer: null, peerMs: null, promisedMs };
}
