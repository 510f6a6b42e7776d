import demoPlan from "../../sample-terrain/demo.geojson?raw";
import demoRaster from "../../sample-terrain/demo.tif?url";
import steppedPlan from "../../sample-terrain/stepped.geojson?raw";
import steppedRaster from "../../sample-terrain/stepped.tif?url";
import tiltedPlan from "../../sample-terrain/tilted.geojson?raw";
import tiltedRaster from "../../sample-terrain/tilted.tif?url";
import type { Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { tell } from "../document/notices.ts";
import { replacePlan, startFrom } from "../document/store.ts";
import { openTerrainFiles } from "./open-ground.ts";

/** The sites that come with the tool. */
export const DEMO_SITES = [
  { key: "demo", label: "Farm on the bend", raster: demoRaster, plan: demoPlan },
  { key: "tilted", label: "Tilted plane, for teaching", raster: tiltedRaster, plan: tiltedPlan },
  {
    key: "stepped",
    label: "Stepped plane, for teaching",
    raster: steppedRaster,
    plan: steppedPlan,
  },
] as const;

export type DemoKey = (typeof DEMO_SITES)[number]["key"];

/** Opens a demo site: its raster and its finished plan, as one undoable step. */
export async function openDemo(key: DemoKey): Promise<void> {
  const site = DEMO_SITES.find((each) => each.key === key) ?? DEMO_SITES[0];
  const planned = planOf(site);
  if (planned) replacePlan(planned, `Open ${site.label}`);
  await openRasterOf(site);
}

/** Starts on the first demo site. @returns opens its ground */
export function startDemo(): () => Promise<void> {
  const site = DEMO_SITES[0];
  const planned = planOf(site);
  if (planned) startFrom({ plan: planned });
  return () => openRasterOf(site);
}

type DemoSite = (typeof DEMO_SITES)[number];

function planOf(site: DemoSite): Plan | null {
  const read = readPlanFile(site.plan);
  if (read.ok) return read.value.plan;
  tell("error", read.failure);
  return null;
}

async function openRasterOf(site: DemoSite): Promise<void> {
  const answer = await fetch(site.raster);
  await openTerrainFiles([new File([await answer.blob()], `${site.key}.tif`)]);
}
