import "./edit-note.css";
import { useEffect, useState } from "preact/hooks";
import { lastMade, type Step, undo } from "../document/store.ts";
import { dragging } from "./drawing-state.ts";

const SHOWN_MS = 10_000;

/** What the last edit did, with a way back, for a while; nothing after a change of view, and none while a drag goes on. */
export function EditNote() {
  const [gone, setGone] = useState<Step | null>(null);
  const step = lastMade.value;
  useEffect(() => {
    if (!step) return;
    const timer = setTimeout(() => setGone(step), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [step]);
  const isShown = step !== null && step !== gone && !dragging.value;
  return (
    <div class="edit-note" aria-live="polite">
      {isShown && (
        <p>
          {step.said ?? step.note}.
          <button type="button" class="text-button" onClick={undo}>
            Undo
          </button>
        </p>
      )}
    </div>
  );
}
