import { LngLat, type Map as MapLibreMap } from "maplibre-gl";
import { planBounds } from "../../shared/apart.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { plan } from "../document/store.ts";
import { ground } from "../live/ground.ts";

/** How much ground is shown round the plan: this share of its width on every side. */
const ROUND_PLAN = 0.1;
/** The same where the map is small: a plan must be large enough there to be taken by the finger. */
const ROUND_PLAN_SMALL = 0.06;
const SMALL_PX = 420;
/** Left free of the plan at the edges of the map, px: room for controls and labels. A small map has no more than a share. */
const FREE_PX = { high: 56, wide: 60 };
const MOST_FREE = { high: 0.2, wide: 0.15 };
const MOST_ZOOM = 20;
/** Views closer to each other than this are one. */
const SAME_VIEW_PX = 4;
const SAME_ZOOM = 0.02;

/** Of the map's width or height. */
const LEAST_SHARE = 0.25;

type Box = [west: number, south: number, east: number, north: number];

/** Shows the plan with the ground round it; does nothing when there is none. */
export function lookAtPlan(map: MapLibreMap, animate = true): void {
  const box = planBox(map);
  if (box) bring(map, box, animate);
}

/** Shows a line as large as it fits. */
export function lookAtLine(map: MapLibreMap, { walk }: Pick<SizedLine, "walk">): void {
  const lons = walk.lonLat.filter((_, i) => i % 2 === 0);
  const lats = walk.lonLat.filter((_, i) => i % 2 === 1);
  if (lons.length === 0) return;
  bring(map, [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)], false);
}

/** True when the map looks at the plan as {@link lookAtPlan} makes it look. */
export function isLookingAtPlan(map: MapLibreMap): boolean {
  const box = planBox(map);
  const wanted = box && map.cameraForBounds(box, framing(map));
  if (!wanted?.center || wanted.zoom === undefined) return false;
  const [here, there] = [map.getCenter(), LngLat.convert(wanted.center)].map((at) =>
    map.project(at),
  );
  const awayPx = Math.hypot(here!.x - there!.x, here!.y - there!.y);
  return awayPx < SAME_VIEW_PX && Math.abs(map.getZoom() - wanted.zoom) < SAME_ZOOM;
}

function framing(map: MapLibreMap) {
  const { clientWidth, clientHeight } = map.getContainer();
  const high = Math.min(FREE_PX.high, MOST_FREE.high * clientHeight);
  const wide = Math.min(FREE_PX.wide, MOST_FREE.wide * clientWidth);
  return { padding: { top: high, bottom: high, left: wide, right: wide }, maxZoom: MOST_ZOOM };
}

function planBox(map: MapLibreMap): Box | null {
  const box = planBounds(plan.peek());
  if (!box) return null;
  const [west, south, east, north] = box;
  const { clientWidth, clientHeight } = map.getContainer();
  const round = Math.min(clientWidth, clientHeight) < SMALL_PX ? ROUND_PLAN_SMALL : ROUND_PLAN;
  const [wide, high] = [(east - west) * round, (north - south) * round];
  return [west - wide, south - high, east + wide, north + high];
}

/** True when the plan takes so little of the map that its line cannot be worked on. */
export function isPlanSmall(map: MapLibreMap): boolean {
  const box = planBounds(plan.peek());
  if (!box) return false;
  const [west, south, east, north] = box;
  const [low, high] = [map.project([west, south]), map.project([east, north])];
  const { clientWidth, clientHeight } = map.getContainer();
  const share = Math.max((high.x - low.x) / clientWidth, (low.y - high.y) / clientHeight);
  return share < LEAST_SHARE;
}

/** Shows the whole raster; does nothing when none is open. */
export function lookAtGround(map: MapLibreMap, animate = true): void {
  const bounds = ground.peek()?.bounds;
  if (bounds) bring(map, [...bounds], animate);
}

/** Where a newly opened ground is best looked at: at the plan when it lies on it, else the whole. */
export function lookAtNew(map: MapLibreMap): void {
  const box = planBounds(plan.peek());
  const bounds = ground.peek()?.bounds;
  const onGround = box && bounds && overlap(box, bounds);
  if (box && (onGround || !bounds)) lookAtPlan(map, false);
  else lookAtGround(map, false);
}

/** True when no part of the plan is in view. */
export function planOutOfView(map: MapLibreMap): boolean {
  const box = planBounds(plan.peek());
  if (!box) return false;
  const seen = map.getBounds();
  return !overlap(box, [seen.getWest(), seen.getSouth(), seen.getEast(), seen.getNorth()]);
}

function overlap(a: readonly number[], b: readonly number[]): boolean {
  return a[0]! < b[2]! && a[2]! > b[0]! && a[1]! < b[3]! && a[3]! > b[1]!;
}

function bring(map: MapLibreMap, box: Box, animate: boolean): void {
  const still = !animate || matchMedia("(prefers-reduced-motion: reduce)").matches;
  map.fitBounds(box, { ...framing(map), duration: still ? 0 : 500 });
}
