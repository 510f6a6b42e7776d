import type { Water } from "../../../shared/plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../../../shared/stage.ts";
import { formatElevation, formatLength, type UnitSystem } from "../../../shared/units.ts";
import { overtopsButForGap } from "../../../shared/words/ground-gap.ts";
import { changeWater } from "../../document/edits/water.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { mustFixOnChosen, tracedLine } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { SettingRow } from "../setting-row.tsx";
import { CrestFact } from "./crest-fact.tsx";
import { FlowFields } from "./flow-fields.tsx";
import { FreeboardField } from "./freeboard-field.tsx";
import { GaugeFields } from "./gauge-fields.tsx";
import { MomentSlider } from "./moment-slider.tsx";
import { StageSlider } from "./stage-slider.tsx";
import { WaterReach } from "./water-reach.tsx";

/** How high the water is expected to stand, and how far above it the levee is built. */
export function WaterBlock() {
  const { water } = plan.value;
  const system = unitSystem.value;
  const byStage = water.by === "stage";
  return (
    <Disclosure
      id="water"
      title="Water"
      startsOpen
      summary={summaryWords(water, system)}
      line={closedLine(water, system)}
    >
      <ByChoice water={water} />
      {byStage ? (
        <SettingRow path="water.stageM" label="Sized-for stage" noDefault />
      ) : (
        <SettingRow path="water.elevationM" label="Sized-for water elevation" noDefault />
      )}
      <StageSlider />
      <MomentSlider />
      <FreeboardField />
      <CrestFact />
      {byStage && <GaugeFields />}
      <FlowFields />
      <WaterReach />
    </Disclosure>
  );
}

function ByChoice({ water }: { water: Water }) {
  const choose = (by: Water["by"]) =>
    changeWater(by === "stage" ? "Give water by stage" : "Give water by elevation", {
      by,
      elevationM: waterElevationAtGauge(water),
    });
  return (
    <fieldset class="choice">
      <legend class="unseen">How the water is given</legend>
      <label>
        <input
          type="radio"
          name="water-by"
          checked={water.by === "stage"}
          onChange={() => choose("stage")}
        />
        Stage at a gauge
      </label>
      <label>
        <input
          type="radio"
          name="water-by"
          checked={water.by === "elevation"}
          onChange={() => choose("elevation")}
        />
        Elevation
      </label>
    </fieldset>
  );
}

/** Above which level the chosen line overtops; how high the water stands where that is not known. */
function summaryWords(water: Water, system: UnitSystem): string {
  if (!isWaterGiven(water)) return "no stage";
  const line = tracedLine.value;
  if (line && line.dry !== null && !chosenLine.value?.levelDoubt?.countsUnknown) {
    return overtopsButForGap(line, chosenLine.value, plan.value, system, mustFixOnChosen.value);
  }
  return `water at ${formatElevation(waterElevationAtGauge(water), system)}`;
}

function closedLine(water: Water, system: UnitSystem): string {
  const stage =
    water.by === "stage" && isWaterGiven(water)
      ? `Stage ${formatLength(water.stageM, system)}, `
      : "";
  const freeboard = `freeboard ${formatLength(water.freeboardM, system)}`;
  return stage ? stage + freeboard : `Freeboard ${formatLength(water.freeboardM, system)}`;
}
