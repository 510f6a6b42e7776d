import "./top-bar.css";
import { useState } from "preact/hooks";
import { edit } from "../../document/edits/alternatives.ts";
import { plan } from "../../document/store.ts";
import { lineInPlan, openBuildings } from "../../live/buildings/open.ts";
import { openField } from "../../live/field.ts";
import { chosenLine } from "../../live/results.ts";
import { pagesOpen } from "../../live/screen.ts";
import { Mark } from "../../ui/icons.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { Alternatives } from "./alternatives.tsx";
import { CompareDialog } from "./compare-dialog.tsx";
import { FindMenu } from "./find-menu.tsx";
import { MoreMenu } from "./more-menu.tsx";

/** The bar across the top: whose plan this is, its lines side by side, and four acts. */
export function TopBar() {
  return (
    <header class="top-bar">
      <div class="brand">
        <Mark />
        <div class="brand-words">
          <h1>Drystead</h1>
          <TextField
            class="plan-title"
            label="Title of the plan"
            labelHidden
            value={plan.value.title}
            placeholder="Untitled plan"
            onText={(title) => {
              if (title === "") return;
              edit({ note: "Rename the plan", change: (now) => ({ ...now, title }) });
            }}
          />
        </div>
      </div>
      <Alternatives />
      <Acts />
    </header>
  );
}

function Acts() {
  const [comparing, setComparing] = useState(false);
  return (
    <div class="acts">
      {chosenLine.value && (
        <button type="button" class="act act-field" onClick={openField}>
          Field
        </button>
      )}
      {lineInPlan.value && (
        <button type="button" class="act" onClick={openBuildings}>
          All buildings
        </button>
      )}
      <FindMenu />
      <button
        type="button"
        class="act"
        disabled={plan.value.alignments.length < 2}
        onClick={() => setComparing(true)}
      >
        Compare
      </button>
      <button
        type="button"
        class="act"
        onClick={() => {
          pagesOpen.value = true;
        }}
      >
        Print
      </button>
      <MoreMenu />
      <CompareDialog open={comparing} onClose={() => setComparing(false)} />
    </div>
  );
}
