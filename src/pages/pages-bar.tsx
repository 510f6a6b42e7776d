import { useState } from "preact/hooks";
import { tabText } from "../../shared/exports/csv.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { FILE_FORMATS } from "../../shared/exports/formats.ts";
import { asFailure, type Failure, failureOf, type Given, refusal } from "../../shared/failure.ts";
import { loadPart } from "../../shared/load-part.ts";
import { addTexts } from "../../shared/words/failure.ts";
import { EXPORT_REFUSALS } from "../../shared/words/refusals/exports.ts";
import { pagesOpen } from "../live/screen.ts";
import { toGrid } from "../live/to-grid.ts";
import { FailureText } from "../ui/failure-text.tsx";
import { Icon } from "../ui/icons.tsx";
import { Menu, MenuItem } from "../ui/menu.tsx";
import { buildSequenceCsv } from "./build-sequence-table.ts";
import { download } from "./download.ts";
import type { MapForPages } from "./map-figure.tsx";
import { OfficeChoice } from "./office-sheet.tsx";
import { PaperChoice } from "./paper-choice.tsx";
import { planPicture } from "./plan-picture.ts";

/** A file that leaves the program. */
interface Download {
  readonly label: string;
  /** What it holds, one word of its name. */
  readonly what: string;
  readonly extension: string;
  /** Media type. */
  readonly type: string;
  readonly content: () => Promise<string | Blob>;
}

function downloadsOf(of: Exported, map: MapForPages): readonly Download[] {
  const { time } = of.line;
  const formats = FILE_FORMATS.map(({ as, label, what, type, write }) => ({
    ...{ label, what, type, extension: as },
    content: () => write(of, toGrid),
  }));
  const picture = {
    ...{ label: "Picture of the map, PNG", what: "map", type: "image/png", extension: "png" },
    content: () => planPicture(map, of),
  };
  if (!time) return [...formats, picture];
  const sequence = {
    ...{ label: "Build sequence, CSV", what: "build-sequence", type: "text/csv", extension: "csv" },
    content: async () => buildSequenceCsv(of, time),
  };
  return [...formats.slice(0, 1), sequence, ...formats.slice(1), picture];
}

addTexts(EXPORT_REFUSALS);

/** Makes a file and hands it to the person. @returns why it cannot be made */
async function save({ plan, alternative }: Exported, file: Download): Promise<Failure | null> {
  const { what, extension, type } = file;
  try {
    const name = { title: plan.title, alternative: alternative.name, what, extension, type };
    download(await file.content(), name);
    return null;
  } catch (thrown) {
    return asFailure(thrown);
  }
}

type Table = Given<"export/copied">["table"];

/** Tables that go to the clipboard, by the words of their buttons. */
function copiesOf(of: Exported): readonly (readonly [Table, () => Promise<string>])[] {
  const { time } = of.line;
  const stakes = async () => {
    const part = await loadPart(
      "the writer of the stakes",
      () => import("../../shared/exports/stakes.ts"),
    );
    return part.stakesCsv(of, toGrid, tabText);
  };
  const sequence = async () => buildSequenceCsv(of, time!, tabText);
  return [["Stakes", stakes], ...(time ? ([["Build sequence", sequence]] as const) : [])];
}

/** Puts a table on the clipboard. @returns that it is there, or why not */
async function copy(table: Table, write: () => Promise<string>): Promise<Failure> {
  try {
    const text = await write();
    await navigator.clipboard.writeText(text).catch(() => {
      throw refusal("export/no-clipboard");
    });
    return failureOf("export/copied", { table });
  } catch (thrown) {
    return asFailure(thrown);
  }
}

interface PagesBarProps {
  readonly of: Exported;
  readonly map: MapForPages;
}

/** What can be done with the pages: choose the paper, print, take tables and line as files. */
export function PagesBar({ of, map }: PagesBarProps) {
  const [said, setSaid] = useState<Failure | null>(null);
  return (
    <div class="sheets-bar" role="toolbar" aria-label="Print">
      <button type="button" class="tool-button" onClick={close}>
        <Icon name="left" /> Back to the plan
      </button>
      <PaperChoice />
      <button type="button" class="tool-button" onClick={() => window.print()}>
        <Icon name="print" /> Print
      </button>
      <button type="button" class="text-button" onClick={toStakes}>
        To the stakes
      </button>
      <OfficeChoice />
      <span class="sheets-bar-gap" />
      <Menu label="Save as a file" icon="save" text="Save as a file">
        {downloadsOf(of, map).map((file) => (
          <MenuItem key={file.label} icon="save" onChoose={() => void save(of, file).then(setSaid)}>
            {file.label}
          </MenuItem>
        ))}
        <hr />
        {copiesOf(of).map(([table, write]) => (
          <MenuItem key={table} icon="copy" onChoose={() => void copy(table, write).then(setSaid)}>
            {table}, copied for a spreadsheet
          </MenuItem>
        ))}
      </Menu>
      {said && (
        <p class="sheets-said" role="status">
          <FailureText failure={said} system={of.system} />
        </p>
      )}
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
