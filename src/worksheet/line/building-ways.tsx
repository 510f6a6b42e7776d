import "./buildings.css";
import { footprintLayer, isPicking } from "../../live/footprints.ts";
import {
  answerGrid,
  footprintFailure,
  gridQuestion,
  importFootprints,
} from "../../live/import-footprints.ts";
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
        accept=".geojson,.json"
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

/** What is wrong with the file that was chosen, or is to be decided of it. */
function ImportSaid() {
  const asked = gridQuestion.value;
  const failure = footprintFailure.value;
  if (asked) {
    return (
      <div class="import-said" role="alert">
        <p>{asked.words}</p>
        <button type="button" class="tool-button" onClick={() => void answerGrid(true)}>
          Take them so
        </button>
        <button type="button" class="text-button" onClick={() => void answerGrid(false)}>
          Leave them
        </button>
      </div>
    );
  }
  if (!failure) return null;
  return (
    <p class="import-said import-wrong" role="alert">
      <FailureText failure={failure} system={unitSystem.value} />
    </p>
  );
}
