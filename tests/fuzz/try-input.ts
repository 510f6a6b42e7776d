import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { asFailure, type Failure, Refusal } from "../../shared/failure.ts";
import type { Engine, TerrainFile } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { metresPer } from "../../shared/vertical-unit.ts";
import { makeEngine } from "../../workers/engine.ts";
import { openTerrain, type Terrain } from "../../workers/raster/terrain.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { madeFile } from "../helpers/raster-files.ts";
import { readText } from "../helpers/read-forecast.ts";
import { said } from "../helpers/said.ts";
import type { Input } from "./inputs.ts";

/** What became of an input. `wrong` says what must never be. */
export type Verdict =
  | { readonly end: "taken"; readonly judged: "same" | "gdal-refuses" | null }
  | { readonly end: "refused"; readonly code: string }
  | { readonly end: "wrong"; readonly why: string };

const DEMO = join(import.meta.dirname, "../../sample-terrain/demo.tif");
/** Longest text of a refusal, characters. */
const MOST_WORDS = 2000;
const LOWEST_M = -500;
const HIGHEST_M = 9000;
const MOST_SIDE = 256;

let demo: Promise<Engine> | null = null;
let gdal: Promise<Gdal> | null = null;

/** @param judge whether GDAL is to read an accepted raster too */
export async function tryInput(input: Input, judge: boolean): Promise<Verdict> {
  try {
    if (input.kind === "raster") return await tryRaster(input, judge);
    if (input.kind === "plan") return await tryPlan(input.text);
    return tryForecast(input.text);
  } catch (thrown) {
    if (thrown instanceof Refusal) return refused(thrown.failure);
    const { message, stack } = thrown instanceof Error ? thrown : new Error(String(thrown));
    return { end: "wrong", why: `not a refusal: ${message}\n${stack}` };
  }
}

export async function closeJudges(): Promise<void> {
  (await gdal)?.remove();
}

function refused(failure: Failure): Verdict {
  const { code, message, remedy } = said(failure);
  if (code === "unexpected") return { end: "wrong", why: `unexpected: ${message}` };
  if (!message || !remedy) return { end: "wrong", why: `${code} has no message or no remedy` };
  const length = message.length + remedy.length;
  if (length > MOST_WORDS) return { end: "wrong", why: `${code} takes ${length} characters` };
  return { end: "refused", code };
}

async function tryRaster(input: Input & { kind: "raster" }, judge: boolean): Promise<Verdict> {
  const files: TerrainFile[] = [input, ...input.besides].map(({ name, bytes }) =>
    madeFile(name, bytes),
  );
  const terrain = await openAny(files);
  const { columns, rows, bounds } = terrain.summary;
  const window = {
    column: 0,
    row: 0,
    columns: Math.min(columns, MOST_SIDE),
    rows: Math.min(rows, MOST_SIDE),
  };
  const { heightsM } = await terrain.cells.read(window);
  const [west, south, east, north] = bounds;
  const picture = await terrain.readGrid(
    (c, r) => [west + ((c + 0.5) / 64) * (east - west), north - ((r + 0.5) / 64) * (north - south)],
    64,
    64,
  );
  await terrain.probe([(west + east) / 2, (south + north) / 2]);
  for (const heightM of [...heightsM, ...picture]) {
    if (heightM < LOWEST_M || heightM > HIGHEST_M)
      return { end: "wrong", why: `ground at ${heightM} m` };
  }
  if (!judge || !input.name.endsWith(".tif")) return { end: "taken", judged: null };
  return judged(input, terrain, heightsM, window.columns);
}

/** Opens with the file's own unit, or as feet where it states none: the person's answer. */
async function openAny(files: TerrainFile[]): Promise<Terrain> {
  try {
    return await openTerrain(files, null);
  } catch (thrown) {
    if (asFailure(thrown).code !== "ground/unit-unknown") throw thrown;
    return openTerrain(files, "foot");
  }
}

/** Where we say there is ground, GDAL 3.8 must read the same number. Where GDAL refuses, nothing is compared. */
async function judged(
  input: Input & { kind: "raster" },
  terrain: Terrain,
  heightsM: Float32Array,
  width: number,
): Promise<Verdict> {
  gdal ??= startGdal();
  const { folder, translate } = await gdal;
  for (const { name, bytes } of [input, ...input.besides]) writeFileSync(join(folder, name), bytes);
  const height = heightsM.length / width;
  const options = [
    "-of",
    "ENVI",
    "-ot",
    "Float64",
    "-b",
    "1",
    "-unscale",
    "-srcwin",
    "0",
    "0",
    `${width}`,
    `${height}`,
  ];
  try {
    await translate(input.name, options, "judged");
  } catch {
    return { end: "taken", judged: "gdal-refuses" };
  }
  const theirs = new Float64Array(new Uint8Array(readFileSync(join(folder, "judged."))).buffer);
  const factor = metresPer(terrain.summary.verticalUnit);
  for (let i = 0; i < heightsM.length; i++) {
    const [ours, judge] = [heightsM[i]!, theirs[i]! * factor];
    if (Number.isNaN(ours)) continue;
    const close = Math.abs(ours - judge) <= 1e-3 + 1e-6 * Math.abs(judge);
    if (!close)
      return { end: "wrong", why: `cell ${i}: ground at ${ours} m, and GDAL reads ${judge} m` };
  }
  return { end: "taken", judged: "same" };
}

async function tryPlan(text: string): Promise<Verdict> {
  const read = readPlanFile(text);
  if (!read.ok) return refused(read.failure);
  const { plan, waterStated } = read.value;
  const again = readPlanFile(writePlanFile(plan));
  if (!again.ok)
    return { end: "wrong", why: `written and refused: ${said(again.failure).message}` };
  if (waterStated) await useAll(plan);
  return { end: "taken", judged: null };
}

async function useAll(plan: Plan): Promise<void> {
  demo ??= openDemo();
  const engine = await demo;
  const { lines } = await engine.size({ plan });
  for (const { id, totals } of lines) {
    const bad = Object.entries(totals).find(
      ([, value]) => typeof value === "number" && !Number.isFinite(value),
    );
    if (bad) throw new Error(`line ${id}: ${bad[0]} is ${bad[1]}`);
  }
  await engine.traceWater({ plan });
}

async function openDemo(): Promise<Engine> {
  const engine = makeEngine();
  await engine.openTerrain({
    files: [madeFile("demo.tif", readFileSync(DEMO))],
    verticalUnit: null,
  });
  return engine;
}

function tryForecast(text: string): Verdict {
  const parsed = readText(text, { zone: "America/Chicago" });
  if (!parsed.ok) return refused(parsed.failure);
  const { rows } = parsed.value;
  const times = rows.map(({ moment }) => moment.atS);
  const rises = times.every(
    (time, i) => Number.isFinite(time) && (i === 0 || time > times[i - 1]!),
  );
  if (!rises) return { end: "wrong", why: "times of the forecast are not one after the other" };
  if (!rows.every(({ levelM }) => Number.isFinite(levelM)))
    return { end: "wrong", why: "a level is not a number" };
  return { end: "taken", judged: null };
}
