import { formatStation } from "../../../shared/units.ts";
import { costUnit, costWords, stationAt } from "../../../shared/words/sideways-cost.ts";
import { chosenLine } from "../../live/results.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { sidewaysNow } from "../../live/search/why-here.ts";

/** What a move costs at the marked station, and how the arrows are to be read. */
export function WhyHereNote() {
  const costs = sidewaysNow.value;
  const system = unitSystem.value;
  const atM = markedM.value ?? chosenLine.value?.totals.greatestHeightAtM ?? 0;
  if (!costs) return <p class="hint">Calculating.</p>;
  const k = stationAt(costs, atM);
  if (k < 0) return null;
  return (
    <>
      <dl class="facts" aria-label={`A move at ${formatStation(atM, system, 0)}`}>
        <div class="fact">
          <dt>At {formatStation(atM, system, 0)}, toward the water</dt>
          <dd>{costWords(costs.waterBagsPerM2[k]!, system)}</dd>
        </div>
        <div class="fact">
          <dt>Toward the land</dt>
          <dd>{costWords(costs.landBagsPerM2[k]!, system)}</dd>
        </div>
      </dl>
      <p class="hint">
        In {costUnit(system)}. Arrows on the map point where a move saves bags. Few arrows: the line
        is near its best, or corners, length or setback keep it there.
      </p>
    </>
  );
}
