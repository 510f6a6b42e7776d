/**
 * Writes the demo site and the two teaching grids beside this file, each with its plan. Everything is
 * computed from the seed in site.ts: the same files come out on every machine.
 * Run from the project's folder: `npm run demo`.
 */
import { statSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Plan } from "../shared/plan.ts";
import { writePlanFile } from "../shared/plan-file.ts";
import { type Grid, writeCog } from "./cog.ts";
import { CORNER, SIZE_M } from "./layout.ts";
import { demoPlan, steppedPlan, tiltedPlan } from "./plans.ts";
import { siteGrid } from "./site.ts";
import {
  steppedGroundM,
  TEACHING_CORNER,
  TEACHING_SIZE_M,
  teachingGrid,
  tiltedGroundM,
} from "./teaching.ts";

async function make(name: string, grid: Grid, planFor: (bytes: number) => Plan): Promise<void> {
  const raster = beside(`${name}.tif`);
  await writeCog(raster, grid);
  writeFileSync(beside(`${name}.geojson`), writePlanFile(planFor(statSync(raster).size)));
  process.stderr.write(`${name}: ${statSync(raster).size} bytes\n`);
}

function beside(name: string): string {
  return fileURLToPath(new URL(name, import.meta.url));
}

function teaching(groundM: (east: number) => number): Grid {
  return {
    heightsM: teachingGrid(groundM),
    columns: TEACHING_SIZE_M,
    corner: TEACHING_CORNER,
    datum: "Classroom height (invented)",
  };
}

const site: Grid = {
  heightsM: siteGrid(),
  columns: SIZE_M,
  corner: CORNER,
  datum: "Oxlip Bend local height (invented)",
};

await make("demo", site, demoPlan);
await make("tilted", teaching(tiltedGroundM), tiltedPlan);
await make("stepped", teaching(steppedGroundM), steppedPlan);
