import { lengthFrom, lengthUnit } from "../../shared/units.ts";
import { ground } from "../live/ground.ts";
import { unitSystem } from "../live/screen.ts";
import { view } from "./view.ts";

const WIDEST_PX = 150;

/** A scale in the units in use, of a round length. */
export function ScaleBar() {
  const system = unitSystem.value;
  const { metresPerPx } = view.value;
  if (!ground.value) return null;
  const length = roundDown(WIDEST_PX * metresPerPx * (1 / lengthFrom(1, system)));
  const widthPx = lengthFrom(length, system) / metresPerPx;
  const label = `${length.toLocaleString("en-US")} ${lengthUnit(system)}`;
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

/** The largest of 1, 2, 5, 10 ... that is not above a value. */
function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const step = [5, 2, 1].find((each) => each * power <= value) ?? 1;
  return Number((step * power).toPrecision(1));
}
