import "./water-block.css";
import type { Water } from "../../../shared/plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../../../shared/stage.ts";
import { formatElevation } from "../../../shared/units.ts";
import { overtopsButForGap } from "../../../shared/words/ground-gap.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { mustFixOnChosen, tracedLine } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { Pane } from "../pane.tsx";
import { SettingRow } from "../setting-row.tsx";
import { ByChoice } from "./by-choice.tsx";
import { CrestFact } from "./crest-fact.tsx";
import { FlowFields } from "./flow-fields.tsx";
import { FreeboardChoices } from "./freeboard-choices.tsx";
import { GaugeFields } from "./gauge-fields.tsx";
import { MomentSlider } from "./moment-slider.tsx";
import { StageSlider } from "./stage-slider.tsx";
import { WaterReach } from "./water-reach.tsx";

/** How high the water is expected, and how far above it the levee is built. */
export function WaterBlock() {
  const { water } = plan.value;
  const byStage = water.by === "stage";
  return (
    <Pane id="water" title="Water" note={<span class="pane-note">{noteWords(water)}</span>}>
      <div class="stage-row">
        {byStage ? (
          <SettingRow path="water.stageM" label="Sized-for stage" noDefault plain />
        ) : (
          <SettingRow path="water.elevationM" label="Sized-for water elevation" noDefault plain />
        )}
      </div>
      <StageSlider />
      <SettingRow path="water.freeboardM" label="Freeboard" plain />
      <CrestFact />
      <Disclosure id="gauge-and-forecast" title="Gauge and forecast" level="part">
        <ByChoice water={water} />
        <MomentSlider />
        <FreeboardChoices />
        {byStage && <GaugeFields />}
        <FlowFields />
        <WaterReach />
      </Disclosure>
    </Pane>
  );
}

/** Above which level the chosen line overtops; how high the water stands where that is not known. */
function noteWords(water: Water): string {
  const system = unitSystem.value;
  if (!isWaterGiven(water)) return "no stage";
  const line = tracedLine.value;
  if (line && line.dry !== null && !chosenLine.value?.levelDoubt?.countsUnknown) {
    return overtopsButForGap(line, chosenLine.value, plan.value, system, mustFixOnChosen.value);
  }
  return `water at ${formatElevation(waterElevationAtGauge(water), system)}`;
}
