import { SHAPE_FILES } from "../../../shared/imports/shape-files.ts";
import { tell } from "../../document/notices.ts";
import { plan } from "../../document/store.ts";
import { importShapes } from "../../live/import-shapes.ts";
import { FileButton } from "../../ui/file-button.tsx";
import { NameRow } from "../name-row.tsx";

/** Ground that the levee must not stand on: a septic field, a gas line, a neighbour's yard. */
export function NoGoList() {
  const { noGo } = plan.value;
  return (
    <section aria-label="No-go areas">
      <h3>No-go areas</h3>
      <ul class="plain-list">
        {noGo.map((area) => (
          <li key={area.id}>
            <NameRow
              list="noGo"
              entry={area}
              label="Name of the no-go area"
              unnamed="this no-go area"
            />
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
