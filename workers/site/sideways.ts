import { layLine, placeAt } from "../../shared/alignment.ts";
import type { SidewaysCostRequest, SidewaysCostResponse } from "../../shared/siting-types.ts";
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
  const bags = (volume: number) => volume / plan.section.bag.placedVolumeM3;
  const lonLat = new Float64Array(2 * chainageM.length);
  const leftNormal = new Float64Array(2 * chainageM.length);
  const line = layLine(alignment, plane);
  for (const [k, atM] of chainageM.entries()) {
    const { leftX, leftY } = placeAt(line, atM);
    lonLat.set(plane.toLonLat(xM[k]!, yM[k]!), 2 * k);
    leftNormal.set([leftX, leftY], 2 * k);
  }
  return {
    ...{ chainageM, lonLat, leftNormal, moveM },
    leftBagsPerM2: left.map(bags),
    rightBagsPerM2: right.map(bags),
  };
}
