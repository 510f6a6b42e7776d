import "./start.css";
import type { ComponentChildren } from "preact";
import { groundLine } from "../../shared/words/ground-line.ts";
import { STEP_WORDS, type StepKey } from "../../shared/words/steps.ts";
import { plan } from "../document/store.ts";
import { example } from "../live/demo-sites.ts";
import { ground } from "../live/ground.ts";
import { tool, unitSystem } from "../live/screen.ts";
import { canFind, findRing } from "../live/search/find-ring.ts";
import { nextStep, steps } from "../live/steps.ts";
import { goTo } from "./go-to.ts";

interface StepStripProps {
  /** Shows the worksheet where the screen shows one room at a time. */
  readonly toWorksheet: () => void;
  /** The ways to a building. */
  readonly buildings: (onPlace: () => void) => ComponentChildren;
}

/** The steps of a plan on ground of one's own, the next one lit, with what it takes; gone once all are done. */
export function StepStrip({ toWorksheet, buildings }: StepStripProps) {
  const next = nextStep.value;
  if (!ground.value || example.value || next === null) return null;
  const go = (key: StepKey | "place") => {
    toWorksheet();
    goTo(key);
  };
  return (
    <section class="start-band start-steps" aria-label="Steps">
      <ol>
        {steps.value.map(({ key, isDone }) => (
          <li key={key} data-step={key} data-done={isDone}>
            <button
              type="button"
              aria-current={key === next ? "step" : undefined}
              onClick={() => go(key)}
            >
              {STEP_WORDS[key].short}
              {isDone && <span class="step-tick"> ✓</span>}
              {isDone && <span class="unseen">done</span>}
            </button>
          </li>
        ))}
      </ol>
      <div class="start-acts">
        {next === "water" && (
          <span class="ground-line">{groundLine(ground.value, plan.value, unitSystem.value)}</span>
        )}
        {next === "building" && buildings(() => go("place"))}
        {next === "line" && <LineActs />}
      </div>
    </section>
  );
}

function LineActs() {
  return (
    <>
      <button
        type="button"
        class="start-button"
        disabled={!canFind.value}
        onClick={() => void findRing()}
      >
        Find the ring
      </button>
      <button
        type="button"
        class="tool-button"
        onClick={() => {
          tool.value = "draw-ring";
        }}
      >
        Draw a ring
      </button>
    </>
  );
}
