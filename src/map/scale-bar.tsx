import { MapScale } from "../drawing/map-scale.tsx";
import { ground } from "../live/ground.ts";
import { unitSystem } from "../live/screen.ts";
import { view } from "./view.ts";

/** A scale in the units in use, of a round length. */
export function ScaleBar() {
  const { metresPerPx } = view.value;
  if (!ground.value) return null;
  return (
    <MapScale class="map-scale" widestPx={150} {...{ metresPerPx, system: unitSystem.value }} />
  );
}
