import { isWaterGiven } from "../../shared/stage.ts";
import { formatLength, type UnitSystem } from "../../shared/units.ts";
import { ground } from "../live/ground.ts";
import { type Pointed, pointed } from "../live/pointed.ts";
import { unitSystem } from "../live/screen.ts";
import { planAtMoment } from "../live/time-now.ts";
import { waterAt } from "./water-level.ts";

/** Ground under the pointer, and how deep the water would stand there. One decimal: lidar is no better. */
export function Readout() {
  const at = pointed.value;
  if (!ground.value || !at || at.groundM === undefined) return null;
  return <p class="map-readout">{words(at, unitSystem.value)}</p>;
}

function words({ at, groundM }: Pointed, system: UnitSystem): string {
  if (groundM === null || groundM === undefined) return "No elevation data here";
  const ground = `Ground ${formatLength(groundM, system, 1)}`;
  if (!isWaterGiven(planAtMoment.value.water)) return ground;
  const depthM = waterAt(planAtMoment.value, at) - groundM;
  const side = depthM > 0 ? "below the water surface" : "above the water surface";
  return `${ground}, ${formatLength(Math.abs(depthM), system, 1)} ${side}`;
}
