import { computed, type ReadonlySignal } from "@preact/signals";
import { DEGREE_M } from "../../shared/constants.ts";
import type { LonLat, NoGo } from "../../shared/plan.ts";
import { type Footprint, nameOf } from "../../shared/plan-footprints.ts";
import { plan } from "../document/store.ts";
import { footprintColumns, footprintLayer, isTaken } from "./footprints.ts";

/** A footprint whose middle is farther from the box about a line lies under none of it, metres. */
const NEAR_M = 60;
/** More are not looked at: a line runs by few. */
const MOST = 300;

let of: readonly unknown[] = [];
let found: readonly NoGo[] = [];

/** Imported footprints near the plan's lines that are no building of it: the same list while these are the same. */
export const importedByLines: ReadonlySignal<readonly NoGo[]> = computed(() => {
  const [layer, columns] = [footprintLayer.value, footprintColumns.value];
  const { alignments, structures } = plan.value;
  const now = [layer, columns, alignments, structures];
  if (now.every((each, k) => each === of[k])) return found;
  of = now;
  const boxes = layer ? alignments.map(({ corners }) => boxAbout(corners)) : [];
  const near = (layer?.footprints ?? []).filter(
    (footprint) => boxes.some((box) => isIn(box, footprint.middle)) && !isTaken(footprint),
  );
  const next = near.slice(0, MOST).map((footprint, k) => ({
    ...asNoGo(footprint, k),
    name: nameOf(footprint, columns) ?? "imported building",
  }));
  if (next.length > 0 || found.length > 0) found = next;
  return found;
});

/** A footprint as a place that a line keeps off. */
export function asNoGo({ corners }: Footprint, index: number): NoGo {
  return { id: `footprint-${index}`, name: "", outline: corners, isImported: true };
}

type Box = readonly [west: number, south: number, east: number, north: number];

function boxAbout(corners: readonly LonLat[]): Box {
  const [lons, lats] = [corners.map(([lon]) => lon), corners.map(([, lat]) => lat)];
  const [south, north] = [Math.min(...lats), Math.max(...lats)];
  const tall = NEAR_M / DEGREE_M;
  const wide = tall / Math.cos((south * Math.PI) / 180);
  return [Math.min(...lons) - wide, south - tall, Math.max(...lons) + wide, north + tall];
}

function isIn([west, south, east, north]: Box, [lon, lat]: LonLat): boolean {
  return lon >= west && lon <= east && lat >= south && lat <= north;
}
