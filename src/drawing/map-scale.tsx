import { scaleLength } from "../../shared/scale-length.ts";
import type { UnitSystem } from "../../shared/units.ts";

interface Props {
  readonly class: string;
  readonly metresPerPx: number;
  readonly widestPx: number;
  readonly system: UnitSystem;
}

/** A scale of a round length, in CSS pixels of a map. */
export function MapScale({ class: name, metresPerPx, widestPx, system }: Props) {
  const { lengthM, label } = scaleLength(widestPx * metresPerPx, system);
  return (
    <div
      class={name}
      role="img"
      aria-label={`Scale: ${label}`}
      style={{ width: `${lengthM / metresPerPx}px` }}
    >
      <span>0</span>
      <span>{label}</span>
    </div>
  );
}
