import { batch } from "@preact/signals";
import { tell } from "../document/notices.ts";
import { plan, replacePlan, startFrom } from "../document/store.ts";
import { DEMO_SITES, type DemoKey, type DemoSite, planOfSite, siteOf } from "./demo-sites.ts";
import { bandIsAway } from "./example-band.ts";
import { ground, groundsOpening } from "./ground.ts";
import { openTerrainAtStart, openTerrainOfPlan } from "./open-ground.ts";

/** Opens a demo site: its raster and its finished plan, as one undoable step. */
export async function openDemo(key: DemoKey): Promise<void> {
  const site = DEMO_SITES.find((each) => each.key === key) ?? DEMO_SITES[0];
  const finished = planOfSite(site);
  if (!finished.ok) return tell("error", finished.failure);
  bandIsAway.value = false;
  batch(() => {
    groundsOpening.value += 1;
    replacePlan(finished.value.plan, `Open ${site.label}`);
  });
  await openRasterOf(site).finally(() => {
    groundsOpening.value -= 1;
  });
}

/** Starts on the first demo site. @returns opens its ground */
export function startDemo(): () => Promise<void> {
  const site = DEMO_SITES[0];
  const finished = planOfSite(site);
  if (finished.ok) startFrom({ plan: finished.value.plan });
  else tell("error", finished.failure);
  return () => openRasterOf(site, openTerrainAtStart);
}

/** Opens the elevation data of a site; does nothing when that is what is open, or another plan came meanwhile. */
export async function openRasterOf(site: DemoSite, open = openTerrainOfPlan): Promise<void> {
  if (siteOf(ground.peek()?.files ?? []) === site) return;
  const answer = await fetch(site.raster);
  const blob = await answer.blob();
  if (siteOf(plan.peek().terrain) !== site) return;
  await open([new File([blob], `${site.key}.tif`)]);
}
