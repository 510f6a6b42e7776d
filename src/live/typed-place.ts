import { failureOf, type Outcome } from "../../shared/failure.ts";
import type { LonLat } from "../../shared/plan.ts";
import { engine } from "../engine.ts";
import { ground } from "./ground.ts";

/**
 * A place as a person types it: longitude and latitude, the two the other way round where only that lies on the
 * elevation data, or x and y of its grid.
 */
export async function readPlace(text: string): Promise<Outcome<LonLat>> {
  const figures = text
    .trim()
    .split(/[\s,;]+/)
    .map(Number);
  const [a, b, ...more] = figures;
  if (a === undefined || b === undefined || more.length > 0 || figures.some(Number.isNaN)) {
    return { ok: false, failure: failureOf("place/unreadable", { came: text }) };
  }
  const { lonLat } = await engine.lonLatOf({ grid: Float64Array.of(a, b) });
  const ways: readonly LonLat[] = [
    [a, b],
    [b, a],
    [lonLat[0]!, lonLat[1]!],
  ];
  const found = ways.find(isOnGround);
  return found
    ? { ok: true, value: found }
    : { ok: false, failure: failureOf("place/elsewhere", { came: text.trim() }) };
}

function isOnGround([lon, lat]: LonLat): boolean {
  const [west, south, east, north] = ground.peek()?.bounds ?? [0, 0, -1, -1];
  return lon >= west && lon <= east && lat >= south && lat <= north;
}
