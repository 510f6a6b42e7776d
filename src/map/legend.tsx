import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { HEIGHT_CLASSES } from "../../shared/height-class.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { isWaterGiven } from "../../shared/stage.ts";
import { lengthIn, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { fromWords } from "../../shared/words/water.ts";
import { coarseWaterWords } from "../../shared/words/water-marks.ts";
import { plan } from "../document/store.ts";
import { EdgeSwatch } from "../drawing/line/edge-swatch.tsx";
import { edgedSections } from "../drawing/line/reach-shapes.ts";
import { SeverityMark, severityWord } from "../drawing/severity-mark.tsx";
import { chosenLine, tracingFailure } from "../live/results.ts";
import { unitSystem } from "../live/screen.ts";
import { shownMarks } from "../live/shown-marks.ts";
import { tracedLine, waterNow } from "../live/water-now.ts";
import { holeInView, lowInView } from "./in-view.ts";
import { MomentNote } from "./moment-note.tsx";
import { MarkSymbol } from "./place-marks.tsx";
import { WATER_SYMBOLS } from "./water-marks.tsx";
import { WEAKEST_SYMBOL } from "./weakest-marks.ts";

/** What the colors on the map mean, and only what is on it; on a phone behind a button. */
export function Legend() {
  const [open, setOpen] = useState(false);
  const limitM = plan.value.practice.limitM;
  const line = chosenLine.value;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls where it is longer than the map, by the keyboard too
    <section class="map-legend" aria-label="Legend" data-open={open} tabIndex={0}>
      <button
        type="button"
        class="map-legend-switch"
        aria-expanded={open}
        onClick={() => setOpen(!open)}
      >
        {open ? "Hide legend" : "Legend"}
      </button>
      {line && (
        <div>
          <h2>Levee height</h2>
          <dl>
            {classLabels(limitM, unitSystem.value).map((label, index) => (
              <Row key={label} swatch={`levee-${index + 1}`}>
                {label}
              </Row>
            ))}
          </dl>
        </div>
      )}
      {line && <SectionRows line={line} />}
      <MarkRows />
      <MomentNote />
      <WaterRows />
      <WaterNote />
    </section>
  );
}

function Row({
  swatch,
  children,
}: {
  readonly swatch: string;
  readonly children: ComponentChildren;
}) {
  return (
    <div>
      <dt class={`swatch swatch-${swatch}`} aria-hidden="true" />
      <dd>{children}</dd>
    </div>
  );
}

/** The marks that are switched on. */
function MarkRows() {
  const shown = shownMarks.value;
  if (shown.size === 0) return null;
  return (
    <dl>
      {shown.has("checks") && (
        <div class="legend-severities">
          <dt class="unseen">Checks</dt>
          {(["stop", "caution", "note"] as const).map((severity) => (
            <dd key={severity}>
              <SeverityMark severity={severity} /> {severityWord(severity)}
            </dd>
          ))}
        </div>
      )}
      {shown.has("weakest") && (
        <Sign picture={<MarkSymbol path={WEAKEST_SYMBOL} />}>lowest factor</Sign>
      )}
      {shown.has("water") && (
        <>
          {tracedLine.value?.wayIn && (
            <Sign picture={<MarkSymbol path={WATER_SYMBOLS["way-in"]} />}>water comes in</Sign>
          )}
          <Sign picture={<MarkSymbol path={WATER_SYMBOLS["first-over"]} />}>overtops first</Sign>
          <Sign picture={<MarkSymbol path={WATER_SYMBOLS.sill} />}>way in without a levee</Sign>
        </>
      )}
    </dl>
  );
}

function Sign({
  picture,
  children,
}: {
  readonly picture: ComponentChildren;
  readonly children: ComponentChildren;
}) {
  return (
    <div>
      <dt class="legend-sign" aria-hidden="true">
        {picture}
      </dt>
      <dd>{children}</dd>
    </div>
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

/** Water and missing data, where the map shows something that could be taken for something else. */
function WaterRows() {
  const trace = waterNow.value;
  const isGiven = isWaterGiven(plan.value.water);
  const hasHoles = holeInView.value;
  const hasLow = trace !== null && lowInView.value;
  const isCoarse = trace !== null && !trace.water.everyCell;
  if ((trace || !isGiven) && !hasLow && !hasHoles && !isCoarse) return null;
  return (
    <dl>
      {!trace && isGiven && <Row swatch="water">below the surface</Row>}
      {(hasLow || isCoarse) && <Row swatch="water">water, connected to {fromWords(trace!)}</Row>}
      {hasLow && <Row swatch="low">low, not connected</Row>}
      {hasHoles && <Row swatch="hole">no elevation data</Row>}
    </dl>
  );
}

/** What the picture of the water does not say. */
function WaterNote() {
  const trace = waterNow.value;
  if (trace?.water.everyCell || !isWaterGiven(plan.value.water)) return null;
  if (trace) return <p>{coarseWaterWords(trace, "legend", unitSystem.value)}</p>;
  if (tracingFailure.value) {
    return <p>Low ground is tinted whether or not the river reaches it: it could not be traced.</p>;
  }
  return <p>Following the water: until then all low ground is tinted.</p>;
}

/** "0–1 ft", "1–2", "2–3", "3–4", "over limit", for the limit in use. */
function classLabels(limitM: number, system: UnitSystem): string[] {
  const steps = HEIGHT_CLASSES - 1;
  const digits = wholeSteps(limitM, system) ? 0 : system === "us" ? 1 : 2;
  const edge = (step: number) => lengthIn((limitM * step) / steps, system).toFixed(digits);
  const labels = Array.from({ length: steps }, (_, index) => {
    const unit = index === 0 ? ` ${lengthUnit(system)}` : "";
    return `${index === 0 ? "0" : edge(index)}–${edge(index + 1)}${unit}`;
  });
  return [...labels, "over limit"];
}

function wholeSteps(limitM: number, system: UnitSystem): boolean {
  const step = lengthIn(limitM, system) / (HEIGHT_CLASSES - 1);
  return Math.abs(step - Math.round(step)) < 1e-6;
}
