/** Runs the benches and prints a table: `npm run bench`, or `npm run bench -- size-ring` for one of them. */
import type { Bench, BenchRow } from "./row.ts";

const BENCHES: ReadonlyMap<string, () => Promise<Bench>> = new Map<string, () => Promise<Bench>>([
  ["size-ring", () => import("./size-ring.ts")],
  ["ground-fields", () => import("./ground-fields.ts")],
  ["read-window", () => import("./read-window.ts")],
  ["large-raster", () => import("./large-raster.ts")],
  ["trace", () => import("./trace.ts")],
  ["first-load", () => import("./first-load.ts")],
  ["search", () => import("./search.ts")],
  ["sweep", () => import("./sweep.ts")],
  ["queue", () => import("./queue.ts")],
]);

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !BENCHES.has(name));
if (unknown.length > 0) {
  process.stderr.write(
    `There is no bench ${unknown.join(", ")}; there are ${[...BENCHES.keys()].join(", ")}.\n`,
  );
  process.exit(2);
}

const rows: BenchRow[] = [];
for (const [name, load] of BENCHES) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  process.stderr.write(`${name} ...\n`);
  rows.push(...(await (await load()).rows()));
}
process.stdout.write(table(rows));

function table(measured: readonly BenchRow[]): string {
  const head = ["case", "ours, ms", "promised, ms", "peer, ms", "ours / peer", "peer"];
  const body = measured.map((row) => [
    row.name,
    row.unit ? `${shown(row.ms)} ${row.unit}` : shown(row.ms),
    row.promisedMs === null
      ? "-"
      : `${shown(row.promisedMs)}${row.ms > row.promisedMs ? " MISSED" : ""}`,
    row.peerMs === null ? "-" : shown(row.peerMs),
    row.peerMs === null ? "-" : (row.ms / row.peerMs).toFixed(2),
    row.peer ?? "-",
  ]);
  const lines = [head, ...body];
  const widths = head.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  const text = lines.map((line) =>
    line
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join("  ")
      .trimEnd(),
  );
  const rule = widths.map((width) => "-".repeat(width)).join("  ");
  return `${[text[0], rule, ...text.slice(1)].join("\n")}\n`;
}

function shown(ms: number): string {
  return ms < 10 ? ms.toFixed(2) : ms.toFixed(0);
}
