import type { HeightTileRequest, TileRequest } from "../../shared/messages.ts";

/** Scheme before the web address of a base map's tile. */
export const BASE_MAP_SCHEME = "drystead-base-map";
/** Schemes of the addresses under which the map asks for pictures of the ground. */
export const SCHEMES = {
  relief: "drystead-relief",
  water: "drystead-water",
  holes: "drystead-holes",
} as const;

type Extra = Pick<HeightTileRequest, "fall" | "relief">;

/**
 * Address template of a tile source. `turn` counts openings of the ground, so that tiles of an earlier
 * ground are never taken for those of the present one; what else the request needs travels in it.
 */
export function tileAddress(scheme: string, turn: number, extra: Partial<Extra> = {}): string {
  return `${scheme}://${turn}/{z}/{x}/{y}?${encodeURIComponent(JSON.stringify(extra))}`;
}

/** The request an address stands for. Throws on an address not made by {@link tileAddress}. */
export function readAddress(address: string): TileRequest & Partial<Extra> {
  const match = /^[a-z-]+:\/\/(\d+)\/(\d+)\/(\d+)\/(\d+)\?(.*)$/.exec(address);
  if (!match) throw new Error(`Not a tile address: ${address}`);
  const [turn, z, x, y] = match.slice(1, 5).map(Number) as [number, number, number, number];
  return { ...(JSON.parse(decodeURIComponent(match[5]!)) as Partial<Extra>), z, x, y, turn };
}
