import { formatShare } from "../units.ts";

/** The most the level inside may be by the hour: the water outside, by the forecast where there is one. */
export function insideCapWords(hasForecast: boolean): string {
  return hasForecast
    ? "Hours after the forecast crest; inside never above the water outside at that hour."
    : "Inside never above the water outside, taken to stay at the sized-for level.";
}

/** How much of the ground inside is not known. */
export function holesInsideWords(holeShare: number): string {
  return `${formatShare(Math.round(holeShare * 100) / 100)} of it has no data; the lowest place may be there.`;
}
