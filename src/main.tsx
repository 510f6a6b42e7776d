import "@fontsource-variable/public-sans";
import "./ui/theme.css";
import { effect } from "@preact/signals";
import { render } from "preact";
import { asFailure, type Failure, failureOf } from "../shared/failure.ts";
import { addTexts } from "../shared/words/failure.ts";
import { App } from "./app.tsx";
import { autosave, restore, type StoredState } from "./document/autosave.ts";
import { tell, withdraw } from "./document/notices.ts";
import { followRoom } from "./document/storage-room.ts";
import { startFrom, undoNote } from "./document/store.ts";
import { savePlan } from "./live/actions.ts";
import { keepAnnounced } from "./live/announced.ts";
import { markStale } from "./live/current.ts";
import { startDemo } from "./live/demo.ts";
import { startInField } from "./live/field.ts";
import { keepPicking } from "./live/footprints.ts";
import { groundsOpening } from "./live/ground.ts";
import { keepGroundOfPlan } from "./live/ground-of-plan.ts";
import { hearEngine } from "./live/heard.ts";
import { keepMarks } from "./live/marks.ts";
import { keepOffline } from "./live/offline.ts";
import { keepGroundUnit, openTerrainAtStart, openTerrainFiles } from "./live/open-ground.ts";
import { tellPageErrors } from "./live/page-errors.ts";
import { theme } from "./live/screen.ts";
import { keepFollowing } from "./live/search/follow.ts";
import { keepSideways } from "./live/search/why-here.ts";
import { keepNoticesSettled } from "./live/settled-notices.ts";
import { keepSimulated } from "./live/simulated.ts";
import { keepSized } from "./live/sizing.ts";
import { keepTraced } from "./live/tracing.ts";
import { keepMomentTraced } from "./live/tracing-moment.ts";
import { fetchRowBodies } from "./worksheet/row-body.tsx";

/** What is over once the plan is saved again. */
const NOT_STORED = ["autosave/full", "autosave/refused"];

effect(() => {
  document.documentElement.dataset.theme = theme.value;
});

/** Time that the first picture has before the rows of the worksheet are fetched, milliseconds. */
const ROWS_MS = 1500;
/** After the page has started, so that it does not take what the start needs, milliseconds. */
const AHEAD_MS = 30_000;
/** The same for storing the program's files, most of which the start has fetched. */
const OFFLINE_MS = 5000;

/** Fetches what is needed later: the network may be gone by then. What cannot be fetched is tried again on its use. */
function loadAhead(): void {
  void Promise.allSettled([
    import("./pages/pages-room.tsx"),
    import("./field/field-room.tsx"),
    import("./lesson/lesson-room.tsx"),
    import("./buildings/buildings-room.tsx"),
    import("qr"),
    import("qr/decode.js"),
    import("./map/found-difference.ts"),
    import("../shared/exports/formats.ts").then(({ loadFormats }) => loadFormats()),
  ]);
}

/** Imported footprints come back to the map, and are kept as they come. What cannot be fetched comes with the view of all buildings. */
async function keepFootprints(): Promise<void> {
  const part = await import("./live/buildings/listed.ts").catch(() => null);
  part?.keepListed();
}

/** The texts of what the engine refuses are there before the network may be gone; else the first refusal fetches them. */
async function fetchTexts(): Promise<void> {
  const part = await import("../shared/words/refusals/late.ts").catch(() => null);
  if (part) addTexts(part.LATE_REFUSALS);
}

/** Brings back what was saved, else the example; until then nothing says that no elevation data is open. */
async function start(): Promise<void> {
  groundsOpening.value += 1;
  await begin().finally(() => {
    groundsOpening.value -= 1;
  });
}

async function begin(): Promise<void> {
  const saved = await restore().catch((thrown) => {
    tell("error", asFailure(thrown));
    return null;
  });
  if (saved?.failure) tell("error", saved.failure);
  const restored = saved !== null && startFrom(saved).ok;
  if (restored) startInField();
  const ground = restored ? () => openStored(saved) : startDemo();
  autosave({
    ...{ onFailure: tellNotStored, onStoredAgain, onStored },
    onTerrain: (files) => void openTerrainFiles(files),
  });
  await ground().finally(keepGroundOfPlan);
}

function tellNotStored(failure: Failure): void {
  tell("error", failure, { label: "Download the plan", run: savePlan });
}

function onStoredAgain(): void {
  for (const code of NOT_STORED) withdraw(code);
  tell("info", failureOf("autosave/again"));
}

const storedInRoom = followRoom({
  storage: navigator.storage,
  onLow: (leftBytes) =>
    tell("info", failureOf("autosave/almost-full", { leftBytes }), {
      label: "Download the plan",
      run: savePlan,
    }),
});

/** Says in the page itself whether the disk has what is on screen. */
function onStored(isStored: boolean): void {
  document.documentElement.dataset.stored = isStored ? "yes" : "no";
  if (isStored) void storedInRoom(undoNote.peek() !== null);
}

async function openStored({ terrain }: StoredState): Promise<void> {
  if (terrain.length > 0) await openTerrainAtStart(terrain);
}

tellPageErrors();
hearEngine();
keepSized();
keepSimulated();
keepGroundUnit();
keepMarks();
keepPicking();
keepNoticesSettled();
markStale(document.documentElement);
keepTraced();
keepMomentTraced();
keepFollowing();
keepSideways();
keepAnnounced();
const started = start();
const root = document.getElementById("app");
if (root) render(<App />, root);
started
  .catch((thrown) => tell("error", asFailure(thrown)))
  .then(() => {
    setTimeout(() => void fetchRowBodies(), ROWS_MS);
    setTimeout(() => void keepFootprints(), ROWS_MS);
    setTimeout(() => void fetchTexts(), ROWS_MS);
    setTimeout(() => void keepOffline(), OFFLINE_MS);
    setTimeout(loadAhead, AHEAD_MS);
  });
