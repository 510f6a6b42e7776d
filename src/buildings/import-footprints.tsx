import { SHAPE_FILES } from "../../shared/imports/shape-files.ts";
import { BUILDINGS } from "../../shared/words/buildings-answer.ts";
import { failureText } from "../../shared/words/failure.ts";
import { importCountyFootprints } from "../live/buildings/listed.ts";
import { footprintFailure } from "../live/import-shapes.ts";
import { unitSystem } from "../live/screen.ts";
import { uncounted } from "../live/uncounted.ts";
import { FileButton } from "../ui/file-button.tsx";

/** Before there are buildings: how to bring them. */
export function ImportFootprints() {
  const why = uncounted.value;
  return (
    <section class="county-answer county-empty">
      <h2>{BUILDINGS.question}</h2>
      <p class="county-title">{BUILDINGS.importTitle}</p>
      <p>{BUILDINGS.importFirst}</p>
      <ImportButton class="start-button" words={BUILDINGS.importTitle} />
      <p class="hint">{BUILDINGS.importLead}</p>
      {why && <p role="status">{failureText(why, unitSystem.value)}</p>}
    </section>
  );
}

interface ImportButtonProps {
  readonly class: string;
  readonly words: string;
}

/** Asks for a file of footprints, and says what is wrong with it. */
export function ImportButton({ words, ...props }: ImportButtonProps) {
  const failure = footprintFailure.value;
  return (
    <>
      <FileButton
        label={BUILDINGS.importFile}
        accept={SHAPE_FILES}
        class={props.class}
        onFiles={([file]) => file && void importCountyFootprints(file)}
      >
        {words}
      </FileButton>
      {failure && (
        <p class="county-wrong" role="alert">
          {failureText(failure, unitSystem.value)}
        </p>
      )}
    </>
  );
}
