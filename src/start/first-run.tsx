import "./first-run.css";
import { GROUND_FILES } from "../../shared/raster-files.ts";
import { drawnOnWords, FIRST_STEPS, STEP_WORDS } from "../../shared/words/steps.ts";
import { plan } from "../document/store.ts";
import { openAny } from "../live/actions.ts";
import { openDemo } from "../live/demo.ts";
import { example } from "../live/demo-sites.ts";
import { ground, groundFailure, groundsOpening } from "../live/ground.ts";
import { unitSystem } from "../live/screen.ts";
import { steps } from "../live/steps.ts";
import { FailureText } from "../ui/failure-text.tsx";
import { FileButton } from "../ui/file-button.tsx";

/** What stands in the place of the map while no elevation data is open: the first steps, or what the plan needs. */
export function FirstRun() {
  if (ground.value || groundsOpening.value > 0 || example.value) return null;
  const { title, terrain, alignments, structures } = plan.value;
  const isStarted = alignments.length + structures.length > 0;
  return (
    <section class="first-run" aria-label="First steps">
      <div class="first-run-body">
        {isStarted ? (
          <>
            <h2>Open the elevation data of this plan</h2>
            <p class="first-run-lead">
              {drawnOnWords(
                title,
                terrain.map(({ name }) => name),
              )}
            </p>
          </>
        ) : (
          <>
            <h2>Plan a sandbag levee around a building</h2>
            <p class="first-run-lead">
              Three steps, then draw a ring or press Find a line. Nothing leaves this computer; no
              internet needed.
            </p>
          </>
        )}
        <ol>
          {(isStarted ? FIRST_STEPS.slice(0, 1) : FIRST_STEPS).map((key, index) => (
            <li key={key} data-next={index === 0}>
              <span class="first-run-number" aria-hidden="true">
                {index + 1}
              </span>
              <div>
                <h3>{STEP_WORDS[key].title}</h3>
                <p>{STEP_WORDS[key].hint}</p>
                {index === 0 && <WhyNot />}
              </div>
              {index === 0 ? <ChooseFile /> : <AfterStep index={index} />}
            </li>
          ))}
        </ol>
        <p class="first-run-demo">
          No data at hand?{" "}
          <button type="button" class="text-button" onClick={() => void openDemo("demo")}>
            Open the demo
          </button>{" "}
          <span>a finished plan of an invented farm</span>
        </p>
      </div>
    </section>
  );
}

function ChooseFile() {
  return (
    <FileButton
      label="Elevation data files"
      accept={GROUND_FILES}
      multiple
      class="start-button"
      onFiles={(files) => void openAny(files)}
    >
      Choose file
    </FileButton>
  );
}

function AfterStep({ index }: { readonly index: number }) {
  const isDone = steps.value.find(({ key }) => key === FIRST_STEPS[index])?.isDone;
  return <span class="first-run-after">{isDone ? "done" : `after step ${index}`}</span>;
}

/** Why the last file could not be opened. */
function WhyNot() {
  const failure = groundFailure.value;
  if (!failure) return null;
  return (
    <p class="first-run-why" role="alert">
      <FailureText failure={failure} system={unitSystem.value} />
    </p>
  );
}
