/**
 * Damaged rasters, plans and forecasts by the thousand: `npm run fuzz -- --inputs 10000 --seed 1`. Each must be taken
 * or refused, within bounded time and memory, in a process of its own; a sample of the rasters taken is held against
 * GDAL. `--from N` goes on at an input, `--inputs 1 --from N` runs one again. Ends with 1 when any went wrong.
 */
import { type ChildProcess, fork } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import type { ChildSays } from "./child.ts";

/** No input may take longer, ms: many times what the slowest takes on a busy machine. */
const MOST_MS = 20_000;
/** No process may grow larger, MB. */
const MOST_MB = 900;

const { values } = parseArgs({
  options: {
    inputs: { type: "string", default: "1000" },
    seed: { type: "string", default: "1" },
    from: { type: "string", default: "0" },
  },
});
const [inputs, seed, from] = [values.inputs, values.seed, values.from].map(Number) as [
  number,
  number,
  number,
];

const counts = new Map<string, number>();
const wrong: string[] = [];
const end = from + inputs;
for (let next = from; next < end; ) next = await runChild(next, end);

const lines = [...counts]
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([what, count]) => `${String(count).padStart(7)}  ${what}`);
process.stdout.write(
  `${lines.join("\n")}\n${inputs} inputs of seed ${seed}: ${wrong.length} went wrong\n`,
);
for (const what of wrong.slice(0, 40)) process.stdout.write(`${what}\n`);
process.exitCode = wrong.length === 0 ? 0 : 1;

/** Runs a process until it is through or something goes wrong; the number of the next input. */
function runChild(start: number, stop: number): Promise<number> {
  const args = [String(seed), String(start), String(stop)];
  const child = fork(join(import.meta.dirname, "child.ts"), args, {
    execArgv: ["--import", "tsx"],
    stdio: ["ignore", "ignore", "pipe", "ipc"],
  });
  let now: ChildSays | null = null;
  let began = Date.now();
  let reason = "";
  let errors = "";
  child.stderr?.on("data", (data) => {
    errors = (errors + String(data)).slice(-2000);
  });
  child.on("message", (said: ChildSays) => {
    now = said;
    began = Date.now();
    if (said.says === "end") note(said);
  });
  const watch = setInterval(() => {
    if (Date.now() - began > MOST_MS) reason = `took longer than ${MOST_MS / 1000} s`;
    if (memoryMB(child) > MOST_MB) reason = `took more than ${MOST_MB} MB`;
    if (reason) child.kill("SIGKILL");
  }, 200);
  return new Promise((resolve) => {
    child.on("exit", (code, signal) => {
      clearInterval(watch);
      if (code === 0) return resolve(stop);
      const index = now ? (now.says === "end" ? now.index + 1 : now.index) : start;
      wrong.push(
        `#${index} ${now?.of ?? ""}: ${reason || `process ended with ${signal ?? code}`}\n${errors}`,
      );
      resolve(index + 1);
    });
  });
}

function note({ index, of, verdict }: ChildSays & { says: "end" }): void {
  const kind = of.split(" ")[0]!;
  const what = verdict.end === "refused" ? `refused ${verdict.code}` : verdict.end;
  const key = `${kind} ${what}${verdict.end === "taken" && verdict.judged ? `, GDAL: ${verdict.judged}` : ""}`;
  counts.set(key, (counts.get(key) ?? 0) + 1);
  if (verdict.end === "wrong") wrong.push(`#${index} ${of}: ${verdict.why}`);
}

/** Resident memory of a process where the system tells it (Linux); 0 elsewhere. */
function memoryMB({ pid }: ChildProcess): number {
  try {
    const pages = Number(readFileSync(`/proc/${pid}/statm`, "utf8").split(" ")[1]);
    return (pages * 4096) / 1e6;
  } catch {
    return 0;
  }
}
