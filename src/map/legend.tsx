import { useState } from "preact/hooks";
import { HEIGHT_CLASSES } from "../../shared/height-class.ts";
import { letterOf } from "../../shared/line-letter.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, lengthIn, type UnitSystem } from "../../shared/units.ts";
import { fromWords } from "../../shared/words/water.ts";
import { chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { EdgeSwatch } from "../drawing/line/edge-swatch.tsx";
import { edgedSections } from "../drawing/line/reach-shapes.ts";
import { ground } from "../live/ground.ts";
import { chosenLine, tracingFailure } from "../live/results.ts";
import { unitSystem } from "../live/screen.ts";
import { tracedLine, waterNow } from "../live/water-now.ts";
import { MomentNote } from "./moment-note.tsx";

/** Less than this kept dry cannot be seen, square metres. */
const LEAST_SHOWN_M2 = 5;

/** What the colours on the map mean, and what the tint of the water does not say; on a phone behind a button. */
export function Legend() {
  const [open, setOpen] = useState(false);
  const limitM = plan.value.practice.limitM;
  const hasHoles = (ground.value?.holeShare ?? 0) > 0;
  const line = chosenLine.value;
  return (
    <section class="map-legend" aria-label="Legend" data-open={open}>
      <button
        type="button"
        class="map-legend-switch"
        aria-expanded={open}
        onClick={() => setOpen(!open)}
      >
        {open ? "Hide legend" : "Legend"}
      </button>
      {line && (
        <dl>
          {classLabels(limitM, unitSystem.value).map((label, index) => (
            <div key={label}>
              <dt class={`swatch swatch-levee-${index + 1}`} aria-hidden="true" />
              <dd>{label}</dd>
            </div>
          ))}
        </dl>
      )}
      {line && <SectionRows line={line} />}
      <MomentNote />
      <dl>
        <WaterRows />
        {hasHoles && (
          <div>
            <dt class="swatch swatch-hole" aria-hidden="true" />
            <dd>no elevation data</dd>
          </div>
        )}
      </dl>
      <WaterNote />
    </section>
  );
}

/** The edges of reaches that are built otherwise; nothing where the whole line is as the plan says. */
function SectionRows({ line }: { readonly line: SizedLine }) {
  const sections = edgedSections(line);
  if (sections.length === 0) return null;
  return (
    <dl>
      {sections.map(({ section, name, pattern }) => (
        <div key={section}>
          <dt aria-hidden="true">
            <EdgeSwatch pattern={pattern} />
          </dt>
          <dd>{name}</dd>
        </div>
      ))}
    </dl>
  );
}

function WaterRows() {
  const trace = waterNow.value;
  if (!trace) {
    return (
      <div>
        <dt class="swatch swatch-water" aria-hidden="true" />
        <dd>below the surface</dd>
      </div>
    );
  }
  const keeps = (tracedLine.value?.keptDryAreaM2 ?? 0) > LEAST_SHOWN_M2 && trace.water.everyCell;
  return (
    <>
      <div>
        <dt class="swatch swatch-water" aria-hidden="true" />
        <dd>water, connected to {fromWords(trace)}</dd>
      </div>
      {trace.water.lowCells > 0 && (
        <div>
          <dt class="swatch swatch-low" aria-hidden="true" />
          <dd>low, not connected</dd>
        </div>
      )}
      {keeps && (
        <div>
          <dt class="swatch swatch-kept" aria-hidden="true" />
          <dd>not reached overland, with {chosenLetter()}</dd>
        </div>
      )}
    </>
  );
}

/** What the picture of the water does not say. */
function WaterNote() {
  const trace = waterNow.value;
  if (trace?.water.everyCell) return null;
  if (trace) {
    const cell = formatLength(trace.water.cellM, unitSystem.value);
    return (
      <p>
        Large elevation data: water is shown in cells of {cell}, without what a line keeps it from.
      </p>
    );
  }
  if (tracingFailure.value) {
    return <p>Low ground is tinted whether or not the river reaches it: it could not be traced.</p>;
  }
  return <p>Following the water: until then all low ground is tinted.</p>;
}

function chosenLetter(): string {
  return letterOf(plan.value.alignments.findIndex((each) => each.id === chosenId.value));
}

/** "to 1 ft", "2", "3", "4, the limit", "over it", for the limit in use. */
function classLabels(limitM: number, system: UnitSystem): string[] {
  const steps = HEIGHT_CLASSES - 1;
  const digits = wholeSteps(limitM, system) ? 0 : system === "us" ? 1 : 2;
  const labels = Array.from({ length: steps }, (_, index) => {
    const topM = (limitM * (index + 1)) / steps;
    if (index === 0) return `to ${formatLength(topM, system, digits)}`;
    const bare = lengthIn(topM, system).toFixed(digits);
    return index === steps - 1 ? `${bare}, the limit` : bare;
  });
  return [...labels, "over it"];
}

function wholeSteps(limitM: number, system: UnitSystem): boolean {
  const step = lengthIn(limitM, system) / (HEIGHT_CLASSES - 1);
  return Math.abs(step - Math.round(step)) < 1e-6;
}
