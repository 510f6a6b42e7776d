import type { WorkPlace } from "../../../shared/plan.ts";
import {
  WORK_PLACES,
  WORK_PLACES_HINT,
  WORK_PLACES_TITLE,
} from "../../../shared/words/work-places.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import type { Tool } from "../../live/screen.ts";
import type { IconName } from "../../ui/icons.tsx";
import { NameRow } from "../name-row.tsx";
import { ToolButton } from "../tool-button.tsx";

const TOOLS: Readonly<Record<WorkPlace["kind"], { readonly tool: Tool; readonly icon: IconName }>> =
  {
    pile: { tool: "place-pile", icon: "pile" },
    pumps: { tool: "place-pumps", icon: "pumps" },
    "truck-way": { tool: "draw-truck-way", icon: "line" },
  };
const KINDS = Object.keys(TOOLS) as WorkPlace["kind"][];

/** Where sand and bags are piled, pumps set up, and where trucks come in. */
export function WorkPlacesList() {
  const { workPlaces = [] } = plan.value;
  return (
    <section aria-label={WORK_PLACES_TITLE}>
      <h3>{WORK_PLACES_TITLE}</h3>
      {workPlaces.length === 0 && <p class="hint">{WORK_PLACES_HINT}</p>}
      <ul class="plain-list">
        {workPlaces.map((place) => (
          <li key={place.id}>
            <NameRow list="workPlaces" entry={place} />
          </li>
        ))}
      </ul>
      <div class="tool-row">
        {KINDS.map((kind) => (
          <ToolButton key={kind} {...TOOLS[kind]} disabled={ground.value === null}>
            {WORK_PLACES[kind].tool}
          </ToolButton>
        ))}
      </div>
    </section>
  );
}
