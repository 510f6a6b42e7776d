import "./start.css";
import { GROUND_FILES } from "../../shared/raster-files.ts";
import { exampleWords } from "../../shared/words/example.ts";
import { openAny } from "../live/actions.ts";
import { example } from "../live/demo-sites.ts";
import { bandIsAway } from "../live/example-band.ts";
import { FileButton } from "../ui/file-button.tsx";

/** Says that the plan on screen is an example, with the ways to one's own; the person can put it away. */
export function ExampleBand() {
  const site = example.value;
  if (!site || bandIsAway.value) return null;
  const { lead, rest } = exampleWords(site.key === "demo");
  const take = (files: File[]) => void openAny(files);
  return (
    <section class="start-band example-band" aria-label="Example">
      <p>
        <strong>{lead}</strong> <span>{rest}</span>
      </p>
      <div class="start-acts">
        <FileButton
          label="Elevation data of your own"
          accept={GROUND_FILES}
          multiple
          class="start-button"
          onFiles={take}
        >
          Open my ground
        </FileButton>
        <FileButton
          label="Plan of your own"
          accept=".geojson,.json"
          class="tool-button"
          onFiles={take}
        >
          Open a plan
        </FileButton>
        <button
          type="button"
          class="text-button"
          onClick={() => {
            bandIsAway.value = true;
          }}
        >
          Keep exploring
        </button>
      </div>
    </section>
  );
}
