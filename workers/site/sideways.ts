import { layLine, placeAt } from "../../shared/alignment.ts";
import type { SidewaysCostRequest, SidewaysCostResponse } from "../../shared/siting-types.ts";
import { waterSideOf } from "../../shared/water-side.ts";
import type { Terrain } from "../raster/terrain.ts";
import { sidewaysCost } from "../search/sideways-cost.ts";
import { alignmentOf } from "./improve.ts";
import { lineSetting, onPlane } from "./site-setting.ts";

const MOVE_M = 1;

/**
 * What moving an alternative sideways would cost or save, station by station, in bags placed.
 * @throws Refusal `plan/no-such-line`
 */
export async function sideways(
  terrain: Terrain,
  { plan, id }: SidewaysCostRequest,
): Promise<SidewaysCostResponse> {
  const alignment = alignmentOf(plan, id);
  const { plane, request } = await lineSetting(terrain, plan, alignment);
  const corners = onPlane(plane, alignment.corners);
  const closed = alignment.kind === "ring";
  const { chainageM, xM, yM, left, right, moveM } = sidewaysCost(request, corners, closed, MOVE_M);
  const line = layLine(alignment, plane);
  const side = waterSideOf(line, plan, plane);
  const bags = (volume: number) => volume / plan.section.bag.placedVolumeM3;
  const lonLat = new Float64Array(2 * chainageM.length);
  const toWater = new Float64Array(2 * chainageM.length);
  for (const [k, atM] of chainageM.entries()) {
    const { leftX, leftY } = placeAt(line, atM);
    lonLat.set(plane.toLonLat(xM[k]!, yM[k]!), 2 * k);
    toWater.set([side * leftX, side * leftY], 2 * k);
  }
  return {
    ...{ chainageM, lonLat, toWater, moveM },
    waterBagsPerM2: (side > 0 ? left : right).map(bags),
    landBagsPerM2: (side > 0 ? right : left).map(bags),
  };
}
