import { openTerrainFiles } from "../live/open-ground.ts";
import { FileButton } from "../ui/file-button.tsx";

/** What stands on the map before any ground is open. */
export function EmptyGround() {
  return (
    <div class="map-empty">
      <svg viewBox="0 0 120 56" width="120" height="56" aria-hidden="true">
        <path d="M2 50c18 0 22-9 38-9s18 6 34 6 20-10 44-10" />
        <path d="M2 40c16 0 24-12 40-12s20 9 34 9 20-12 42-12" />
        <path d="M2 29c14 0 26-14 42-14s20 12 34 12 18-13 40-13" />
        <path d="M2 18C16 18 30 4 46 4s18 13 32 13 18-12 40-12" />
      </svg>
      <h2>No elevation data yet</h2>
      <p>
        Open the elevation data of the site, or drop it here: a GeoTIFF, an Esri ASCII grid, or the
        tiles of one survey together.
      </p>
      <FileButton
        label="Elevation data files"
        multiple
        class="map-empty-button"
        onFiles={(files) => void openTerrainFiles(files)}
      >
        Open elevation data
      </FileButton>
    </div>
  );
}
