import type { Alignment } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { pagesOpen } from "../live/screen.ts";
import { mustFixOn } from "../live/water-now.ts";
import { Icon } from "../ui/icons.tsx";
import { buildOrderCsv } from "./build-order-table.ts";
import { downloadText } from "./download.ts";
import { lineGeoJson, stakesGeoJson } from "./line-geojson.ts";
import { type PaperName, paper, setPaper } from "./paper.ts";
import { stationTableCsv } from "./station-table.ts";

interface SheetsBarProps {
  readonly title: string;
  readonly alternative: Alignment;
  readonly line: SizedLine;
  readonly system: UnitSystem;
}

const PAPERS: readonly PaperName[] = ["A4", "Letter"];
const GEOJSON = { extension: "geojson", type: "application/geo+json" };

/** What can be done with the sheets: choose the paper, print, take the tables and the line as files. */
export function PagesBar({ title, alternative, line, system }: SheetsBarProps) {
  const name = { title, alternative: alternative.name };
  return (
    <div class="sheets-bar" role="toolbar" aria-label="Sheets">
      <button type="button" class="tool-button" onClick={close}>
        <Icon name="left" /> Back to the plan
      </button>
      <fieldset class="choice">
        <legend class="unseen">Paper</legend>
        {PAPERS.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="paper"
              checked={paper.value === each}
              onChange={() => setPaper(each)}
            />
            {each}
          </label>
        ))}
      </fieldset>
      <button type="button" class="tool-button" onClick={() => window.print()}>
        <Icon name="print" /> Print
      </button>
      <button type="button" class="text-button" onClick={toStations}>
        To the stations
      </button>
      <span class="sheets-bar-gap" />
      <button
        type="button"
        class="tool-button"
        onClick={() =>
          downloadText(stationTableCsv(line, system, mustFixOn(line)), {
            ...name,
            what: "stations",
            extension: "csv",
            type: "text/csv",
          })
        }
      >
        <Icon name="save" /> Stations, CSV
      </button>
      {line.time && (
        <button
          type="button"
          class="tool-button"
          onClick={() =>
            downloadText(buildOrderCsv(line, line.time!, system, mustFixOn(line)), {
              ...name,
              what: "order",
              extension: "csv",
              type: "text/csv",
            })
          }
        >
          <Icon name="save" /> Order, CSV
        </button>
      )}
      <button
        type="button"
        class="tool-button"
        onClick={() =>
          downloadText(lineGeoJson(alternative, line, mustFixOn(line)), {
            ...name,
            ...GEOJSON,
            what: "line",
          })
        }
      >
        <Icon name="save" /> Line, GeoJSON
      </button>
      <button
        type="button"
        class="tool-button"
        onClick={() =>
          downloadText(stakesGeoJson(line, mustFixOn(line)), {
            ...name,
            ...GEOJSON,
            what: "stakes",
          })
        }
      >
        <Icon name="save" /> Stakes, GeoJSON
      </button>
    </div>
  );
}

function toStations(): void {
  const part = document.querySelector(".sheet [data-table='stations']")?.closest("section");
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  part?.scrollIntoView({ block: "start", behavior: still ? "auto" : "smooth" });
}

function close(): void {
  pagesOpen.value = false;
}
