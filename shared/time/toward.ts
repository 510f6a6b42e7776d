import type { Toward } from "./types.ts";

interface Place {
  readonly xM: number;
  readonly yM: number;
}

const FOUR: readonly Toward[] = ["N", "E", "S", "W"];
const EIGHT: readonly Toward[] = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];

/**
 * Where each of several places lies from their middle, x east and y north: by four directions where that tells them
 * apart, else by eight; null for all where neither does, and for one alone.
 */
export function towards(places: readonly Place[]): (Toward | null)[] {
  const mean = (of: (place: Place) => number) =>
    places.reduce((sum, place) => sum + of(place), 0) / places.length;
  const [xM, yM] = [mean((place) => place.xM), mean((place) => place.yM)];
  const turns = places.map((place) => Math.atan2(place.xM - xM, place.yM - yM) / (2 * Math.PI));
  for (const names of places.length > 1 ? [FOUR, EIGHT] : []) {
    const count = names.length;
    const found = turns.map((turn) => names[(Math.round(turn * count) + count) % count]!);
    if (new Set(found).size === found.length) return found;
  }
  return places.map(() => null);
}
