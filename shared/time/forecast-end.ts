import type { RiverClock } from "./river-clock.ts";
import type { LineTime } from "./types.ts";

/** True where the last bag is laid, at the slow pace, after the forecast's last row: nothing then says that there is time. */
export function endsBeforeTheWork({ forecastEndH, finishSlowH }: LineTime): boolean {
  return forecastEndH !== null && finishSlowH !== null && finishSlowH > forecastEndH;
}

/** A forecast this much over what the line is sized for is said, metres. */
const SAME_M = 0.01;

/**
 * How far the likely forecast rises over the water the line is sized for, metres; 0 where it does not. To be in
 * time with a levee that the forecast goes over is no comfort.
 */
export function riseOverPlanM({ crests }: LineTime): number {
  const riseM = crests.find(({ band }) => band === "likely")?.riseM ?? 0;
  return riseM > SAME_M ? riseM : 0;
}

/** True where the highest water of a forecast is its last row: its crest is still to come. */
export function endsRising({ crestH, toH }: RiverClock): boolean {
  return crestH >= toH;
}
