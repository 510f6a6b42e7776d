import "@fontsource-variable/public-sans";
import "./ui/theme.css";
import { effect } from "@preact/signals";
import { render } from "preact";
import { asFailure, type Failure } from "../shared/failure.ts";
import { savePlan } from "./actions.ts";
import { App } from "./app.tsx";
import { startDemo } from "./demo.ts";
import { type Kept, keepPlan, restore } from "./document/keeping.ts";
import { keptAgain } from "./document/keeping-failures.ts";
import { startFrom } from "./document/store.ts";
import { markStale } from "./live/current.ts";
import { keepMarks } from "./marks.ts";
import { keepGroundUnit, openTerrainFiles } from "./open-ground.ts";
import { keepFollowing } from "./siting/follow.ts";
import { keepSideways } from "./siting/why-here.ts";
import { keepSized } from "./sizing.ts";
import { tell, theme, withdraw } from "./state.ts";
import { keepTraced } from "./tracing.ts";
import { keepMomentTraced } from "./tracing-moment.ts";

/** What is over once the plan is kept again. */
const NOT_KEPT = ["keep/full", "keep/refused"];

effect(() => {
  document.documentElement.dataset.theme = theme.value;
});

async function start(): Promise<void> {
  const kept = await restore().catch((thrown) => {
    tell("error", asFailure(thrown));
    return null;
  });
  if (kept?.failure) tell("error", kept.failure);
  const restored = kept !== null && startFrom(kept).ok;
  const ground = restored ? () => openKept(kept) : startDemo();
  keepPlan({ onFailure: tellNotKept, onKeptAgain, onKept });
  await ground();
}

function tellNotKept(failure: Failure): void {
  if (failure.code === "keep/second-page") tell("info", failure);
  else tell("error", failure, { label: "Download the plan", run: savePlan });
}

function onKeptAgain(): void {
  for (const code of NOT_KEPT) withdraw(code);
  tell("info", keptAgain());
}

/** Says in the page itself whether the disk has what is on screen. */
function onKept(isKept: boolean): void {
  document.documentElement.dataset.kept = isKept ? "yes" : "no";
}

async function openKept({ terrain }: Kept): Promise<void> {
  if (terrain.length > 0) await openTerrainFiles(terrain);
}

keepSized();
keepGroundUnit();
keepMarks();
markStale(document.documentElement);
keepTraced();
keepMomentTraced();
keepFollowing();
keepSideways();
const root = document.getElementById("app");
if (root) render(<App />, root);
start().catch((thrown) => tell("error", asFailure(thrown)));
