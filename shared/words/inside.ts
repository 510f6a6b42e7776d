/** What the level inside by the hour is held to: the water outside, by the forecast where there is one. */
export function insideCapWords(hasForecast: boolean): string {
  return hasForecast
    ? "Hours after the forecast crest; inside never above the water outside at that hour."
    : "Inside never above the water outside, which is taken to stay at the level sized for.";
}
