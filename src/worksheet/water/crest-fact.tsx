import { isWaterGiven, waterElevationAtGauge } from "../../../shared/stage.ts";
import { formatElevation, grouped, lengthIn } from "../../../shared/units.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { Fact } from "../../ui/fact.tsx";

/** The crest the levee is built to: one elevation, or its range along the line where the water falls. */
export function CrestFact() {
  const { water } = plan.value;
  if (!isWaterGiven(water)) return null;
  const system = unitSystem.value;
  const stations = chosenLine.value?.stations ?? [];
  const crests = stations.map((station) => station.crestM);
  const at = waterElevationAtGauge(water) + water.freeboardM;
  const lowest = crests.length > 0 ? Math.min(...crests) : at;
  const highest = formatElevation(crests.length > 0 ? Math.max(...crests) : at, system);
  const from = formatElevation(lowest, system);
  return (
    <dl class="facts crest-fact">
      <Fact name="Top of levee">
        <strong>
          {from === highest ? highest : `${grouped(lengthIn(lowest, system), 2)} to ${highest}`}
        </strong>
      </Fact>
    </dl>
  );
}
