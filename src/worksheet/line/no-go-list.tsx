import { SHAPE_FILES } from "../../../shared/imports/shape-files.ts";
import { deleteNoGo, renameNoGo } from "../../document/edits/site.ts";
import { tell } from "../../document/notices.ts";
import { plan } from "../../document/store.ts";
import { importShapes } from "../../live/import-shapes.ts";
import { FileButton } from "../../ui/file-button.tsx";
import { Icon } from "../../ui/icons.tsx";
import { TextField } from "../../ui/text-field.tsx";

/** Ground that the levee must not stand on: a septic field, a gas line, a neighbour's yard. */
export function NoGoList() {
  const { noGo } = plan.value;
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
      <FileButton
        label="No-go areas from a file"
        accept={SHAPE_FILES}
        class="tool-button"
        onFiles={([file]) => file && void take(file)}
      >
        Import no-go areas
      </FileButton>
    </section>
  );
}

async function take(file: File): Promise<void> {
  const failure = await importShapes(file, "no-go");
  if (failure) tell("error", failure);
}
