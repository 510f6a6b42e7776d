import "@fontsource-variable/public-sans";
import "./ui/theme.css";
import { effect } from "@preact/signals";
import { render } from "preact";
import { asFailure } from "../shared/failure.ts";
import { openTerrainFiles } from "./actions.ts";
import { App } from "./app.tsx";
import { startDemo } from "./demo.ts";
import { type Kept, keepPlan, restore } from "./document/keeping.ts";
import { startFrom } from "./document/store.ts";
import { keepFollowing } from "./siting/follow.ts";
import { keepSideways } from "./siting/why-here.ts";
import { keepSized } from "./sizing.ts";
import { tell, theme } from "./state.ts";
import { keepTraced } from "./tracing.ts";
import { keepMomentTraced } from "./tracing-moment.ts";

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
  keepPlan((failure) => tell(failure.code === "keep/second-page" ? "info" : "error", failure));
  await ground();
}

async function openKept({ plan, terrain }: Kept): Promise<void> {
  if (terrain.length > 0) await openTerrainFiles(terrain, plan.ground.verticalUnit);
}

keepSized();
keepTraced();
keepMomentTraced();
keepFollowing();
keepSideways();
const root = document.getElementById("app");
if (root) render(<App />, root);
start().catch((thrown) => tell("error", asFailure(thrown)));
