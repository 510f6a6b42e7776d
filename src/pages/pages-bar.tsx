import type { Exported } from "../../shared/exports/exported.ts";
import { FILE_FORMATS } from "../../shared/exports/formats.ts";
import { asFailure } from "../../shared/failure.ts";
import { tell } from "../document/notices.ts";
import { pagesOpen } from "../live/screen.ts";
import { toGrid } from "../live/to-grid.ts";
import { Icon } from "../ui/icons.tsx";
import { Menu, MenuItem } from "../ui/menu.tsx";
import { buildSequenceCsv } from "./build-sequence-table.ts";
import { downloadText } from "./download.ts";
import { OfficeChoice } from "./office-sheet.tsx";
import { type PaperName, paper, setPaper } from "./paper.ts";

const PAPERS: readonly PaperName[] = ["A4", "Letter"];

/** A file that leaves the program. */
interface Download {
  readonly label: string;
  /** What it holds, one word of its name. */
  readonly what: string;
  readonly extension: string;
  /** Media type. */
  readonly type: string;
  readonly text: () => Promise<string>;
}

function downloadsOf(of: Exported): readonly Download[] {
  const { time } = of.line;
  const formats = FILE_FORMATS.map(({ as, label, what, type, write }) => ({
    ...{ label, what, type, extension: as },
    text: () => write(of, toGrid),
  }));
  if (!time) return formats;
  const sequence = {
    ...{ label: "Build sequence, CSV", what: "build-sequence", type: "text/csv", extension: "csv" },
    text: async () => buildSequenceCsv(of, time),
  };
  return [...formats.slice(0, 1), sequence, ...formats.slice(1)];
}

/** Makes a file and hands it to the person; why it cannot be made is said in a notice. */
async function download({ plan, alternative }: Exported, file: Download): Promise<void> {
  const { what, extension, type } = file;
  try {
    const name = { title: plan.title, alternative: alternative.name, what, extension, type };
    downloadText(await file.text(), name);
  } catch (thrown) {
    tell("error", asFailure(thrown));
  }
}

/** What can be done with the pages: choose the paper, print, take tables and line as files. */
export function PagesBar({ of }: { readonly of: Exported }) {
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
      <OfficeChoice />
      <span class="sheets-bar-gap" />
      <Menu label="Save as a file" icon="save" text="Save as a file">
        {downloadsOf(of).map((file) => (
          <MenuItem key={file.label} icon="save" onChoose={() => void download(of, file)}>
            {file.label}
          </MenuItem>
        ))}
      </Menu>
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
