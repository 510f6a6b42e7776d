import { drawKeysWords } from "../../shared/words/draw-keys.ts";
import { type Tool, tool } from "../live/screen.ts";
import { finishDrawing } from "./draw-input.ts";
import { drawingByKeys, drawnCorners } from "./drawing-state.ts";
import { theMap } from "./the-map.ts";

const WORDS: Readonly<Record<Exclude<Tool, "move">, string>> = {
  "draw-ring": "Set the corners of the ring in turn.",
  "draw-line": "Set the corners of the line, from one high end to the other.",
  "draw-structure": "Set the corners of the building.",
  "draw-no-go": "Set the corners of the area to stay out of.",
  "draw-flow": "Set a place upstream, then one downstream.",
  "place-gauge": "Set the place of the gauge.",
  "draw-culvert": "Set one end of the pipe, then the other, each in the ditch.",
  "draw-road": "Set the corners of the way out, from the buildings on. Leave out bridges.",
  "place-drain": "Set the place of the drain.",
  "place-pile": "Set the place where sand and bags are piled and filled.",
  "place-pumps": "Set the place of the pumps.",
  "draw-truck-way": "Set the corners of the trucks' way in, the last where they unload.",
  "place-source": "Set a place in the river, where it has water on an ordinary day.",
};

/** Corners needed before a shape can be ended by hand; tools that end by themselves are not named. */
const FEWEST: Partial<Record<Tool, number>> = {
  "draw-ring": 3,
  "draw-line": 2,
  "draw-road": 2,
  "draw-truck-way": 2,
  "draw-structure": 3,
  "draw-no-go": 3,
};

const SHAPES: Partial<Record<Tool, "ring" | "line" | "area">> = {
  "draw-ring": "ring",
  "draw-line": "line",
  "draw-road": "line",
  "draw-truck-way": "line",
  "draw-structure": "area",
  "draw-no-go": "area",
};

function finish(): void {
  const map = theMap();
  if (map) finishDrawing(map.getCanvas());
}

/** While something is being drawn: what to do next, and buttons to end or give up. */
export function DrawHint() {
  const now = tool.value;
  if (now === "move") return null;
  const fewest = FEWEST[now];
  const set = drawnCorners.value ?? 0;
  const enough = fewest !== undefined && set >= fewest;
  const byKeys = drawKeysWords(SHAPES[now] ?? "place", set);
  return (
    <div class="map-hint" role="status">
      <span>
        {WORDS[now]} {drawingByKeys.value ? byKeys : fewest && "Double-click or Enter ends it."}
      </span>
      {fewest !== undefined && (
        <button type="button" class="text-button" disabled={!enough} onClick={finish}>
          Finish
        </button>
      )}
      <button
        type="button"
        class="text-button"
        onClick={() => {
          tool.value = "move";
        }}
      >
        Cancel
      </button>
    </div>
  );
}
