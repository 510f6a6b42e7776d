import { footprintLayer, isPicking } from "../live/footprints.ts";

/** While footprints are picked: what a click does, and the way out. */
export function PickHint() {
  if (!footprintLayer.value || !isPicking.value) return null;
  return (
    <div class="map-hint" role="status">
      <span>Click a building to take it, again to leave it out.</span>
      <button
        type="button"
        class="text-button"
        onClick={() => {
          isPicking.value = false;
        }}
      >
        Done
      </button>
    </div>
  );
}
