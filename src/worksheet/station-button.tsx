import { formatStation } from "../../shared/units.ts";
import { markedM, unitSystem } from "../live/screen.ts";

/** A station that is marked on map, profile and section when it is pressed. */
export function StationButton({ chainageM }: { readonly chainageM: number }) {
  const station = formatStation(chainageM, unitSystem.value);
  return (
    <button
      type="button"
      class="station-button"
      aria-label={`Mark station ${station}`}
      onClick={() => {
        markedM.value = chainageM;
      }}
    >
      {station}
    </button>
  );
}
