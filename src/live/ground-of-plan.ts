import { batch, effect, untracked } from "@preact/signals";
import { gapTo, planBounds } from "../../shared/apart.ts";
import { asFailure } from "../../shared/failure.ts";
import { speaksOf } from "../../shared/ground-settings.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { storeTerrain } from "../document/autosave.ts";
import { tell, withdraw } from "../document/notices.ts";
import { plan } from "../document/store.ts";
import { openRasterOf } from "./demo.ts";
import { siteOf } from "./demo-sites.ts";
import { addressedIn } from "./file-at.ts";
import { ground, groundsOpening, markMet, openFiles } from "./ground.ts";
import { askToOpen } from "./open-address.ts";
import { openTerrainOfPlan, refsOf } from "./open-ground.ts";
import { planCameLast } from "./plan-apart.ts";

/**
 * Keeps the elevation data with the plan: where another plan comes (undo, a file), the data it names is opened again
 * when it comes with the tool or was open on this page before. The invented ground of an example never stays under a
 * plan of another place, or of none.
 */
export function keepGroundOfPlan(): () => void {
  let named: string | null = null;
  let last: GroundSummary | null = null;
  const met: (readonly File[])[] = [];
  return effect(() => {
    const [now, open, files] = [plan.value, ground.value, openFiles.value];
    if (files.length > 0 && !met.includes(files)) met.push(files);
    if (groundsOpening.value > 0) return;
    const before = named;
    named = JSON.stringify(now.terrain);
    const isOther = named !== before;
    const isNew = open !== last;
    if (isOther || isNew) planCameLast.value = !isNew;
    last = open;
    if (open && speaksOf(now, open.files) && now.terrain.length > 0) return;
    untracked(() => {
      const isStray = open && siteOf(open.files) && !isOn(now, open);
      // What was taken back while its ground opened leaves that ground under the plan from before.
      const isWanted = isOther || (isNew && isStray);
      const site = siteOf(now.terrain);
      const known = met.findLast(
        (each) =>
          now.terrain.length > 0 && addressedIn(each).length === 0 && speaksOf(now, refsOf(each)),
      );
      withdraw("address/ask");
      if (isWanted && site)
        void openRasterOf(site).catch((thrown) => tell("error", asFailure(thrown)));
      else if (isWanted && known) void openTerrainOfPlan(known);
      else if (isOther && now.terrain.some(({ address }) => address)) askToOpen(now.terrain);
      else if (isStray) closeGround();
    });
  });
}

/** Whether a plan that names no elevation data has its place on what is open. */
function isOn(now: Plan, { bounds }: GroundSummary): boolean {
  return now.terrain.length === 0 && planBounds(now) !== null && !gapTo(now, bounds);
}

function closeGround(): void {
  batch(() => {
    openFiles.value = [];
    markMet.value = null;
    ground.value = null;
  });
  storeTerrain([]).catch((thrown) => tell("error", asFailure(thrown)));
}
