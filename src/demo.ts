import demoPlan from "../sample-terrain/demo.geojson?raw";
import demoRaster from "../sample-terrain/demo.tif?url";
import steppedPlan from "../sample-terrain/stepped.geojson?raw";
import steppedRaster from "../sample-terrain/stepped.tif?url";
import tiltedPlan from "../sample-terrain/tilted.geojson?raw";
import tiltedRaster from "../sample-terrain/tilted.tif?url";
import { readPlanFile } from "../shared/plan-file.ts";
import { openTerrainFiles } from "./actions.ts";
import { replacePlan } from "./document/store.ts";
import { tell } from "./state.ts";

/** The sites that come with the tool. */
export const DEMO_SITES = [
  { key: "demo", label: "Farm on the bend", raster: demoRaster, plan: demoPlan },
  { key: "tilted", label: "Tilted plane, for teaching", raster: tiltedRaster, plan: tiltedPlan },
  { key: "stepped", label: "Stepped plane, for teaching", raster: steppedRaster, plan: steppedPlan },
] as const;

export type DemoKey = (typeof DEMO_SITES)[number]["key"];

/** Opens a demo site: its raster and its finished plan, as one undoable step. */
export async function openDemo(key: DemoKey): Promise<void> {
  const site = DEMO_SITES.find((each) => each.key === key);
  if (!site) return;
  const read = readPlanFile(site.plan);
  if (!read.ok) return tell("error", read.failure);
  const answer = await fetch(site.raster);
  const file = new File([await answer.blob()], `${key}.tif`);
  replacePlan(read.value.plan, `Open ${site.label}`);
  await openTerrainFiles([file]);
}
