import "./buildings.css";
import { SHAPE_FILES } from "../../../shared/imports/shape-files.ts";
import { footprintLayer, isPicking } from "../../live/footprints.ts";
import { footprintFailure, importFootprints } from "../../live/import-shapes.ts";
import { tool, unitSystem } from "../../live/screen.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import { FileButton } from "../../ui/file-button.tsx";

interface BuildingWaysProps {
  /** Goes to where a place is typed; left out where that is beside the buttons. */
  readonly onPlace?: () => void;
}

/** The ways to a building: drawn on the map, picked from imported footprints, or by a place that is typed. */
export function BuildingWays({ onPlace }: BuildingWaysProps) {
  const layer = footprintLayer.value;
  return (
    <>
      <button
        type="button"
        class="tool-button"
        aria-pressed={tool.value === "draw-structure"}
        onClick={() => {
          tool.value = tool.peek() === "draw-structure" ? "move" : "draw-structure";
        }}
      >
        Draw the building
      </button>
      {layer && (
        <button
          type="button"
          class="tool-button"
          aria-pressed={isPicking.value}
          onClick={() => {
            tool.value = "move";
            isPicking.value = !isPicking.peek();
          }}
        >
          Pick on the map
        </button>
      )}
      <FileButton
        label="Footprints of buildings"
        accept={SHAPE_FILES}
        class="tool-button"
        onFiles={([file]) => file && void importFootprints(file)}
      >
        {layer ? "Other footprints" : "Import footprints"}
      </FileButton>
      {onPlace && (
        <button type="button" class="tool-button" onClick={onPlace}>
          Type coordinates
        </button>
      )}
      <ImportSaid />
    </>
  );
}

/** What is wrong with the file that was chosen. */
function ImportSaid() {
  const failure = footprintFailure.value;
  if (!failure) return null;
  return (
    <p class="import-said import-wrong" role="alert">
      <FailureText failure={failure} system={unitSystem.value} />
    </p>
  );
}
