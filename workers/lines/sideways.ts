import { layLine, placeAt } from "../../shared/alignment.ts";
import type { CallOptions } from "../../shared/messages.ts";
import type { SidewaysCostRequest, SidewaysCostResponse } from "../../shared/search-types.ts";
import { waterSideOf } from "../../shared/water-side.ts";
import type { Terrain } from "../raster/terrain.ts";
import { inTurns } from "../search/in-turns.ts";
import { sidewaysCost } from "../search/sideways-cost.ts";
import type { SearchRequest } from "../search/types.ts";
import { alignmentOf } from "./improve.ts";
import { lineSetting, onPlane } from "./search-setup.ts";

const MOVE_M = 1;

/**
 * What moving an alternative sideways would cost or save, station by station, in bags placed: the search says
 * where a move is allowed; its price over the height limit is no bags and is left out.
 * @throws Refusal `plan/no-such-line`
 */
export async function sideways(
  terrain: Terrain,
  { plan, id }: SidewaysCostRequest,
  options?: CallOptions,
): Promise<SidewaysCostResponse> {
  const alignment = alignmentOf(plan, id);
  const { plane, request } = await lineSetting(terrain, plan, alignment);
  const corners = onPlane(plane, alignment.corners);
  const isRing = alignment.kind === "ring";
  const { chainageM, xM, yM, left, right } = await inTurns(
    sidewaysCost(request, corners, isRing, MOVE_M),
    options,
  );
  const line = layLine(alignment, plane);
  const side = waterSideOf(line, plan, plane);
  const count = chainageM.length;
  const lonLat = new Float64Array(2 * count);
  const toWater = new Float64Array(2 * count);
  const waterBagsPerM2 = new Float64Array(count);
  const landBagsPerM2 = new Float64Array(count);
  const bags = (areaM2: number) => areaM2 / MOVE_M / plan.section.bag.placedVolumeM3;
  for (const [k, atM] of chainageM.entries()) {
    const [x, y] = [xM[k]!, yM[k]!];
    const { leftX, leftY } = placeAt(line, atM);
    const here = areaAt(request, x, y);
    const moved = (by: number) => areaAt(request, x + by * leftX, y + by * leftY);
    const toLeft = Number.isNaN(left[k]!) ? Number.NaN : bags(moved(MOVE_M) - here);
    const toRight = Number.isNaN(right[k]!) ? Number.NaN : bags(moved(-MOVE_M) - here);
    lonLat.set(plane.toLonLat(x, y), 2 * k);
    toWater.set([side * leftX, side * leftY], 2 * k);
    waterBagsPerM2[k] = side > 0 ? toLeft : toRight;
    landBagsPerM2[k] = side > 0 ? toRight : toLeft;
  }
  return { chainageM, lonLat, toWater, waterBagsPerM2, landBagsPerM2, moveM: MOVE_M };
}

/** Section placed on level ground at a place, m2; NaN where the ground is not known. */
function areaAt({ crestAt, ground, section }: SearchRequest, xM: number, yM: number): number {
  const heightM = crestAt(xM, yM) - ground.heightAt(xM, yM);
  return Number.isNaN(heightM) ? Number.NaN : section.areaAt(Math.max(0, heightM));
}
