import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { waterNow } from "../../live/water-now.ts";
import { NameRow } from "../name-row.tsx";
import { ToolButton } from "../tool-button.tsx";

const STATES = {
  wet: "",
  dry: "above the water: none comes from here",
  outside: "outside the elevation data",
} as const;

/** Where water comes from: the places marked, or every low edge of the ground. */
export function SourcesList() {
  const sources = plan.value.sources ?? [];
  const states = new Map(waterNow.value?.sources.map(({ id, state }) => [id, state]));
  return (
    <section aria-label="Sources of water">
      <h3>Where it comes from</h3>
      {sources.length === 0 && (
        <p class="hint">
          Every low edge of the elevation data. Mark a place in the river if that is not so.
        </p>
      )}
      <ul class="plain-list">
        {sources.map((source) => (
          <li key={source.id}>
            <NameRow
              list="sources"
              entry={source}
              label="Name of the source"
              unnamed="this source"
            />
            <small>{STATES[states.get(source.id) ?? "wet"]}</small>
          </li>
        ))}
      </ul>
      <div class="tool-row">
        <ToolButton tool="place-source" icon="source" disabled={ground.value === null}>
          Mark a source
        </ToolButton>
      </div>
    </section>
  );
}
