import type { Exported } from "../../shared/exports/exported.ts";
import { geoJson } from "../../shared/exports/geojson.ts";
import { stakesCsv } from "../../shared/exports/stakes.ts";
import { pagesOpen } from "../live/screen.ts";
import { Icon } from "../ui/icons.tsx";
import { buildSequenceCsv } from "./build-sequence-table.ts";
import { downloadText } from "./download.ts";
import { type PaperName, paper, setPaper } from "./paper.ts";

const PAPERS: readonly PaperName[] = ["A4", "Letter"];
const CSV = { extension: "csv", type: "text/csv" };
const GEOJSON = { extension: "geojson", type: "application/geo+json" };

/** A file that leaves the program. */
interface Download {
  readonly label: string;
  /** What it holds, one word of its name. */
  readonly what: string;
  readonly format: typeof CSV;
  readonly text: (of: Exported) => string;
}

function downloadsOf({ line: { time } }: Exported): readonly Download[] {
  return [
    { label: "Stakes, CSV", what: "stakes", format: CSV, text: stakesCsv },
    ...(time
      ? [
          {
            ...{ label: "Build sequence, CSV", what: "build-sequence", format: CSV },
            text: (of: Exported) => buildSequenceCsv(of, time),
          },
        ]
      : []),
    { label: "Line and stakes, GeoJSON", what: "line", format: GEOJSON, text: geoJson },
  ];
}

/** What can be done with the pages: choose the paper, print, take tables and line as files. */
export function PagesBar({ of }: { readonly of: Exported }) {
  const name = { title: of.plan.title, alternative: of.alternative.name };
  return (
    <div class="sheets-bar" role="toolbar" aria-label="Print">
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
      <button type="button" class="text-button" onClick={toStakes}>
        To the stakes
      </button>
      <span class="sheets-bar-gap" />
      {downloadsOf(of).map(({ label, what, format, text }) => (
        <button
          key={label}
          type="button"
          class="tool-button"
          onClick={() => downloadText(text(of), { ...name, ...format, what })}
        >
          <Icon name="save" /> {label}
        </button>
      ))}
    </div>
  );
}

function toStakes(): void {
  const part = document.querySelector(".sheet [data-table='stations']")?.closest("section");
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  part?.scrollIntoView({ block: "start", behavior: still ? "auto" : "smooth" });
}

function close(): void {
  pagesOpen.value = false;
}
