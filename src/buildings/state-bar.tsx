import { SHOWN_STATES } from "../../shared/buildings/shown-states.ts";
import { formatCount } from "../../shared/units.ts";
import { stateWords } from "../../shared/words/building-states.ts";
import { plan } from "../document/store.ts";
import { choiceShown } from "../live/buildings/choosing.ts";
import { isTimeKnown } from "../live/buildings/crew.ts";
import { countsNow, filterBy, stateFilter } from "../live/buildings/shown.ts";
import { unitSystem } from "../live/screen.ts";
import { StateSwatch } from "./state-swatch.tsx";

/** The states with their counts: legend and filter in one. */
export function StateBar() {
  const counts = countsNow.value;
  const choice = choiceShown.value?.choice ?? null;
  const about = {
    plan: plan.value,
    system: unitSystem.value,
    lines: choice?.chosen.length ?? null,
    isTimeKnown: isTimeKnown.value,
  };
  const states = SHOWN_STATES.filter((state) => state !== "chosen" || choice !== null);
  return (
    <ul class="county-bar" aria-label="Buildings by state">
      {states.map((state) => {
        const [first, second] = stateWords(state, about);
        return (
          <li key={state}>
            <button
              type="button"
              aria-pressed={stateFilter.value === state}
              onClick={() => filterBy(state)}
            >
              <span class="county-count">
                <StateSwatch state={state} />{" "}
                {state === "too-late" && !about.isTimeKnown ? "–" : formatCount(counts[state])}
              </span>
              <span class="county-state">
                {first} <br />
                {second}
              </span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}
