import "@fontsource-variable/public-sans";
import "./ui/theme.css";
import { effect } from "@preact/signals";
import { render } from "preact";
import { asFailure } from "../shared/failure.ts";
import { openTerrainFiles } from "./actions.ts";
import { App } from "./app.tsx";
import { openDemo } from "./demo.ts";
import { keepPlan, restore } from "./document/keeping.ts";
import { replacePlan } from "./document/store.ts";
import { keepSized } from "./sizing.ts";
import { tell, theme } from "./state.ts";

effect(() => {
  document.documentElement.dataset.theme = theme.value;
});

async function start(): Promise<void> {
  const kept = await restore().catch((thrown) => {
    tell("error", asFailure(thrown));
    return null;
  });
  if (kept) {
    replacePlan(kept.plan, "Restore");
    if (kept.terrain.length > 0) {
      await openTerrainFiles(kept.terrain, kept.plan.ground.verticalUnit);
    }
  } else {
    await openDemo("demo");
  }
  keepPlan((failure) => tell("error", failure));
}

keepSized();
const root = document.getElementById("app");
if (root) render(<App />, root);
start().catch((thrown) => tell("error", asFailure(thrown)));
