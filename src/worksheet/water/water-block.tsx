import "./water-block.css";
import type { Water } from "../../../shared/plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../../../shared/stage.ts";
import { overtopsButForGap, waterAtWords } from "../../../shared/words/ground-gap.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { mustFixOnChosen, tracedLine } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { Pane } from "../pane.tsx";
import { RowBody } from "../row-body.tsx";
import { SettingField } from "../setting-field.tsx";
import { CrestFact } from "./crest-fact.tsx";
import { StageSlider } from "./stage-slider.tsx";

/** How high the water is expected, and how far above it the levee is built. */
export function WaterBlock() {
  const { water } = plan.value;
  const byStage = water.by === "stage";
  return (
    <Pane id="water" title="Water" note={<span class="pane-note">{noteWords(water)}</span>}>
      <div class="stage-row">
        {byStage ? (
          <SettingField path="water.stageM" label="Sized-for stage" noDefault />
        ) : (
          <SettingField path="water.elevationM" label="Sized-for water elevation" noDefault />
        )}
      </div>
      <StageSlider />
      <SettingField path="water.freeboardM" label="Freeboard" />
      <CrestFact />
      <Disclosure id="gauge-and-forecast" title="Gauge and forecast" level="part">
        <RowBody of="GaugeBody" />
      </Disclosure>
    </Pane>
  );
}

/** Above which level the chosen line overtops; how high the water stands where that is not known; what must be fixed. */
function noteWords(water: Water): string {
  const system = unitSystem.value;
  if (!isWaterGiven(water)) return "no stage";
  const line = tracedLine.value;
  if (line && line.dry !== null && !chosenLine.value?.levelDoubt?.countsUnknown) {
    return overtopsButForGap(line, chosenLine.value, plan.value, system, mustFixOnChosen.value);
  }
  return waterAtWords(waterElevationAtGauge(water), mustFixOnChosen.value, system);
}
