import { importFootprints } from "../../live/import-footprints.ts";
import { tool } from "../../live/screen.ts";
import { FileButton } from "../../ui/file-button.tsx";

/** The ways to a building: drawn on the map, or taken from footprints. */
export function BuildingWays() {
  return (
    <>
      <button
        type="button"
        class="start-button"
        onClick={() => {
          tool.value = "draw-structure";
        }}
      >
        Draw the building
      </button>
      <FileButton
        label="Footprints of buildings"
        accept=".geojson,.json"
        class="tool-button"
        onFiles={(files) => {
          for (const file of files) void importFootprints(file);
        }}
      >
        Import footprints
      </FileButton>
    </>
  );
}
