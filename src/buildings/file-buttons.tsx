import { buildingsCsv } from "../../shared/exports/buildings-csv.ts";
import { buildingsGeoJson } from "../../shared/exports/buildings-geojson.ts";
import type { ExportedBuildings } from "../../shared/exports/buildings-records.ts";
import { TABLE } from "../../shared/words/buildings-table.ts";
import { verticalDatumWords } from "../../shared/words/vertical-datum.ts";
import { fileStem, MOST_STEM, saveFile } from "../document/files.ts";
import { plan } from "../document/store.ts";
import { bandChoices, choiceShown } from "../live/buildings/choosing.ts";
import { wholeTimed } from "../live/buildings/crew.ts";
import { listed } from "../live/buildings/listed.ts";
import { rowsNow, statesNow } from "../live/buildings/shown.ts";
import { clockOffsetMin } from "../live/buildings/times.ts";
import { ground } from "../live/ground.ts";
import { unitSystem } from "../live/screen.ts";

const FORMATS = [
  { label: TABLE.csv, ending: "csv", type: "text/csv", write: buildingsCsv },
  {
    label: TABLE.geojson,
    ending: "geojson",
    type: "application/geo+json",
    write: buildingsGeoJson,
  },
] as const;

/** Files of all buildings; only once all are checked and the choice is of this stock. */
export function FileButtons() {
  const isReady = wholeTimed.value !== null && !choiceShown.value?.isStale;
  return (
    <div class="county-files">
      {FORMATS.map(({ label, ending, type, write }) => (
        <button
          key={ending}
          type="button"
          class="county-text-act"
          disabled={!isReady}
          onClick={() => {
            const exported = exportedNow();
            if (!exported) return;
            const stem = fileStem(`${exported.plan.title} buildings`, MOST_STEM);
            saveFile(write(exported), { type, name: `${stem}.${ending}` });
          }}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

function exportedNow(): ExportedBuildings | null {
  const sweep = wholeTimed.peek();
  const list = listed.peek();
  if (!sweep || !list) return null;
  return {
    ...{ plan: plan.peek(), buildings: list.buildings, sweep },
    ...{ states: statesNow.peek(), rows: rowsNow.peek() },
    isChosen: choiceShown.peek() !== null,
    forecasts: bandChoices.peek(),
    verticalDatum: verticalDatumWords(plan.peek(), ground.peek()),
    ...{ offsetMin: clockOffsetMin.peek(), system: unitSystem.peek() },
  };
}
