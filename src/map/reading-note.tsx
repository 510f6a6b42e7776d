import { groundReading } from "./ground-reading.ts";

/** Why a large raster has no relief yet or not all of it, and how far the reading is. */
export function ReadingNote() {
  const share = groundReading.value;
  if (share === null) return null;
  return (
    <label class="map-hint">
      Reading all of the elevation data for the map: {Math.floor(share * 100)} %. Blank ground is
      not read yet.
      <progress value={share} max={1} />
    </label>
  );
}
