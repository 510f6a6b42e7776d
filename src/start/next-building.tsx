import { plan } from "../document/store.ts";
import { nextIsAsked, startNextBuilding } from "../live/next-building.ts";

/** Before the next building's plan is started: whether to save this one. */
export function NextBuilding() {
  if (!nextIsAsked.value) return null;
  return (
    <section class="notice question" role="alert" aria-label="Next building">
      <p>
        <strong>Start a plan for the next building?</strong> Ground, gauge, water, forecast, crew
        and levee type stay. Buildings and lines of "{plan.value.title}" go; undo brings them back.
      </p>
      <div class="tool-row">
        <button type="button" class="start-button" onClick={() => startNextBuilding(true)}>
          Save this plan, then start
        </button>
        <button type="button" class="tool-button" onClick={() => startNextBuilding(false)}>
          Start without saving
        </button>
        <button
          type="button"
          class="text-button"
          onClick={() => {
            nextIsAsked.value = false;
          }}
        >
          Cancel
        </button>
      </div>
    </section>
  );
}
