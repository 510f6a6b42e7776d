import { deleteNoGo, renameNoGo } from "../../document/edits/site.ts";
import { plan } from "../../document/store.ts";
import { Icon } from "../../ui/icons.tsx";
import { TextField } from "../../ui/text-field.tsx";

/** Ground that the levee must not stand on: a septic field, a gas line, a neighbour's yard. */
export function NoGoList() {
  const { noGo } = plan.value;
  if (noGo.length === 0) return null;
  return (
    <section aria-label="No-go areas">
      <h3>No-go areas</h3>
      <ul class="plain-list">
        {noGo.map((area) => (
          <li key={area.id} class="named-row">
            <TextField
              label="Name of the no-go area"
              labelHidden
              value={area.name}
              placeholder="name"
              onText={(name) => renameNoGo(area, name)}
            />
            <button
              type="button"
              class="icon-button"
              aria-label={`Delete ${area.name || "this no-go area"}`}
              onClick={() => deleteNoGo(area)}
            >
              <Icon name="trash" />
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
