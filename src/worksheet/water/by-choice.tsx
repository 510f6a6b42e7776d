import type { Water } from "../../../shared/plan.ts";
import { waterElevationAtGauge } from "../../../shared/stage.ts";
import { changeWater } from "../../document/edits/water.ts";

/** Whether the water is given by its stage at a gauge or by its elevation. */
export function ByChoice({ water }: { water: Water }) {
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
