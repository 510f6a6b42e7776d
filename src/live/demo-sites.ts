import { computed, type ReadonlySignal } from "@preact/signals";
import demoPlan from "../../sample-terrain/demo.geojson?raw";
import demoRaster from "../../sample-terrain/demo.tif?url";
import steppedPlan from "../../sample-terrain/stepped.geojson?raw";
import steppedRaster from "../../sample-terrain/stepped.tif?url";
import tiltedPlan from "../../sample-terrain/tilted.geojson?raw";
import tiltedRaster from "../../sample-terrain/tilted.tif?url";
import type { Outcome } from "../../shared/failure.ts";
import type { Plan, TerrainRef } from "../../shared/plan.ts";
import { type ReadPlan, readPlanFile } from "../../shared/plan-file.ts";
import { plan } from "../document/store.ts";

/** The sites that come with the tool: invented, each with its elevation data and a finished plan. */
export const DEMO_SITES = [
  { key: "demo", label: "Farm on the bend", raster: demoRaster, text: demoPlan },
  { key: "tilted", label: "Tilted plane, for teaching", raster: tiltedRaster, text: tiltedPlan },
  {
    key: "stepped",
    label: "Stepped plane, for teaching",
    raster: steppedRaster,
    text: steppedPlan,
  },
] as const;

export type DemoSite = (typeof DEMO_SITES)[number];
export type DemoKey = DemoSite["key"];

const read = new Map<DemoSite, Outcome<ReadPlan>>();

/** The finished plan of a site. */
export function planOfSite(site: DemoSite): Outcome<ReadPlan> {
  const known = read.get(site) ?? readPlanFile(site.text);
  read.set(site, known);
  return known;
}

/** The site that comes with the tool on whose elevation data a plan lies; null for a plan of one's own. */
export function siteOf(terrain: readonly TerrainRef[]): DemoSite | null {
  if (terrain.length === 0) return null;
  const isOf = (site: DemoSite) => {
    const outcome = planOfSite(site);
    return outcome.ok && terrain.every((file) => names(outcome.value.plan, file));
  };
  return DEMO_SITES.find(isOf) ?? null;
}

function names({ terrain }: Plan, file: TerrainRef): boolean {
  return terrain.some(({ name, bytes }) => name === file.name && bytes === file.bytes);
}

/** The example that the plan is, edited or not: its ground is invented. Null for a plan of one's own. */
export const example: ReadonlySignal<DemoSite | null> = computed(() => siteOf(plan.value.terrain));

/** Whether a person has changed anything of the example but which line is chosen. */
export function isTouched(site: DemoSite, now: Plan): boolean {
  const outcome = planOfSite(site);
  if (!outcome.ok) return true;
  const { chosenId: _, ...finished } = outcome.value.plan;
  const { chosenId: __, ...present } = now;
  return JSON.stringify(finished) !== JSON.stringify(present);
}
