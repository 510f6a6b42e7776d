import { serveModulePage } from "../helpers/module-page.ts";

/** The document's own modules with a title, a stage to drag, undo and redo: no map, no engine. */
const HTML = `
<div class="plan-title"><input aria-label="Title of the plan"></div>
<div class="stage-slider"><input type="range" min="0" max="100" step="0.5" style="width: 600px"></div>
<button id="undo">Undo</button><button id="redo">Redo</button>`;

const SCRIPT = `
  import { autosave, restore } from "/src/document/autosave.ts";
  import { apply, endGesture, history, plan, redo, redoNote, startFrom, undo, undoNote } from "/src/document/store.ts";
  const [title, stage] = document.querySelectorAll("input");
  const kept = await restore();
  if (kept) startFrom(kept);
  history.subscribe(() => {
    title.value = plan.value.title;
    stage.value = plan.value.water.stageM;
    document.getElementById("undo").ariaLabel = undoNote.value ? "Undo: " + undoNote.value : "Nothing to undo";
    document.getElementById("redo").ariaLabel = redoNote.value ? "Redo: " + redoNote.value : "Nothing to redo";
  });
  let drags = 0;
  title.onchange = () => apply({ note: "Rename", change: (now) => ({ ...now, title: title.value }) });
  stage.onpointerdown = () => { drags += 1; endGesture(); };
  stage.oninput = () => apply({
    note: "Move the stage",
    gesture: "stage-" + drags,
    change: (now) => ({ ...now, water: { ...now.water, stageM: stage.valueAsNumber } }),
  });
  document.onkeydown = (event) => {
    if (!event.ctrlKey || event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    if (event.shiftKey) redo(); else undo();
  };
  autosave({
    onFailure: ({ code }) => console.error(code),
    onStoredAgain: () => {},
    onStored: (isKept) => { document.documentElement.dataset.stored = isKept ? "yes" : "no"; },
  });`;

/** Serves the page alone: it starts in a fraction of the program's time, so that a thousand kills take an hour. */
export const serveDocumentPage = () => serveModulePage(HTML, SCRIPT);
