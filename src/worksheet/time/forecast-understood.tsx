import type { ReadRow } from "../../../shared/forecasts/types.ts";
import { formatLength, type UnitSystem } from "../../../shared/units.ts";
import { momentWords, zoneWords } from "../../../shared/words/clock.ts";
import {
  forecastChangeWords,
  forecastNoteWords,
  leftOutWords,
  understoodWords,
} from "../../../shared/words/forecast.ts";
import { plan } from "../../document/store.ts";
import { draftChange, draftUnderstood } from "../../live/forecast-draft.ts";
import { unitSystem } from "../../live/screen.ts";

const MOST_ROWS = 400;
const MOST_LEFT_OUT = 6;

/** What is understood of the text in the draft, before it counts; nothing where it is not understood. */
export function Understood() {
  const understood = draftUnderstood.value;
  if (!understood) return null;
  const system = unitSystem.value;
  const { leftOut, notes, rows } = understood;
  const change = draftChange.value;
  const hasBand = rows.some(({ lowM }) => lowM !== null);
  return (
    <section class="forecast-understood" aria-label="Understood">
      <p role="status">{understoodWords(understood)}</p>
      {change && <p>{forecastChangeWords(plan.value, change, system)}</p>}
      <section
        class="forecast-rows"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
        tabIndex={0}
        aria-label="Rows understood"
      >
        <table>
          <thead>
            <tr>
              <th scope="col">Time</th>
              <th scope="col">{understood.levels === "stage" ? "Stage" : "Elevation"}</th>
              {hasBand && <th scope="col">Low to high</th>}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, MOST_ROWS).map((row) => (
              <RowLine key={row.moment.atS} row={row} hasBand={hasBand} system={system} />
            ))}
          </tbody>
        </table>
      </section>
      {notes.map((note) => (
        <p key={forecastNoteWords(note)} class="hint">
          {forecastNoteWords(note)}
        </p>
      ))}
      {leftOut.length > 0 && (
        <p class="hint">
          Left out: {leftOut.slice(0, MOST_LEFT_OUT).map(leftOutWords).join(" ")}
          {leftOut.length > MOST_LEFT_OUT && ` And ${leftOut.length - MOST_LEFT_OUT} more.`}
        </p>
      )}
    </section>
  );
}

interface RowLineProps {
  readonly row: ReadRow;
  readonly hasBand: boolean;
  readonly system: UnitSystem;
}

function RowLine({ row, hasBand, system }: RowLineProps) {
  const { moment, levelM, lowM, highM } = row;
  const figure = (m: number | null) => (m === null ? "–" : formatLength(m, system, 2));
  return (
    <tr>
      <td>
        {momentWords(moment, true, system)} {zoneWords(moment)}
      </td>
      <td>{figure(levelM)}</td>
      {hasBand && (
        <td>
          {figure(lowM)} to {figure(highM)}
        </td>
      )}
    </tr>
  );
}
