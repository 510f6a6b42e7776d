import { Refusal } from "../failure.ts";
import type { OnGrid } from "../messages.ts";
import type { LonLat } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import { type DrawingGrid, drawingGrid } from "./drawing-grid.ts";

/**
 * A line's stakes on the grid of the elevation data; where that is in degrees, on the UTM zone of the place. Null where
 * it is in a unit that nobody sets out by.
 */
export async function stakeGrid(
  { stations }: Pick<SizedLine, "stations">,
  toGrid: (places: readonly LonLat[]) => Promise<OnGrid>,
): Promise<DrawingGrid | null> {
  const places = stations.map(({ lon, lat }): LonLat => [lon, lat]);
  try {
    return drawingGrid(places, await toGrid(places));
  } catch (thrown) {
    if (thrown instanceof Refusal) return null;
    throw thrown;
  }
}
