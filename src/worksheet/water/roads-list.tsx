import type { TracedRoad } from "../../../shared/water-types.ts";
import { ROAD_WORDS, roadFloodWords } from "../../../shared/words/roads.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { waterNow } from "../../live/water-now.ts";
import { NameRow } from "../name-row.tsx";
import { ToolButton } from "../tool-button.tsx";

/** Ways out by road, and when each first floods. */
export function RoadsList() {
  const { roads = [] } = plan.value;
  const traced = new Map(waterNow.value?.roads.map((each) => [each.id, each]));
  return (
    <section aria-label="Exit roads">
      <h3>Exit roads</h3>
      {roads.length === 0 && <p class="hint">{ROAD_WORDS.none}</p>}
      <ul class="plain-list">
        {roads.map((road) => (
          <li key={road.id} class="pipe">
            <NameRow list="roads" entry={road} />
            <small>{stateWords(traced.get(road.id))}</small>
          </li>
        ))}
      </ul>
      <div class="tool-row">
        <ToolButton tool="draw-road" icon="line" disabled={ground.value === null}>
          Draw an exit road
        </ToolButton>
      </div>
    </section>
  );
}

function stateWords(traced: TracedRoad | undefined): string {
  if (!traced) return "";
  const { name: road, isKnown, floodsAboveM: elevationM, ...flood } = traced;
  if (!isKnown) return ROAD_WORDS.notKnown;
  if (elevationM === null) return ROAD_WORDS.never;
  return `${roadFloodWords({ road, elevationM, ...flood }, unitSystem.value)}.`;
}
