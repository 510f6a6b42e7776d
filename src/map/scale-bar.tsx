import { scaleLength } from "../../shared/scale-length.ts";
import { ground } from "../live/ground.ts";
import { unitSystem } from "../live/screen.ts";
import { view } from "./view.ts";

const WIDEST_PX = 150;

/** A scale in the units in use, of a round length. */
export function ScaleBar() {
  const system = unitSystem.value;
  const { metresPerPx } = view.value;
  if (!ground.value) return null;
  const { lengthM, label } = scaleLength(WIDEST_PX * metresPerPx, system);
  const widthPx = lengthM / metresPerPx;
  return (
    <div
      class="map-scale"
      role="img"
      aria-label={`Scale: ${label}`}
      style={{ width: `${widthPx}px` }}
    >
      <span>0</span>
      <span>{label}</span>
    </div>
  );
}
