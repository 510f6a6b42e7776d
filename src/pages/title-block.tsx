import type { Exported } from "../../shared/exports/exported.ts";
import { letterOfLine } from "../../shared/line-letter.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { LinePart } from "../../shared/words/must-fix-band.ts";
import { type HeadCell, headCells, headNotes, lineBuiltWords } from "../../shared/words/sheet.ts";
import { LineBand } from "./line-band.tsx";

/** What all pages of a print have in common. */
export interface SheetFrame {
  readonly of: Exported;
  readonly ground: GroundSummary | null;
  /** `7F3A-21`. */
  readonly number: string;
  /** When it was laid out, in words. */
  readonly printed: string;
  /** `Sheet 2 of 5`, or `Office pages`. */
  readonly label: string;
}

interface TitleBlockProps extends SheetFrame {
  readonly page: string;
  /** The part of the line that the page is for; null for all of it. */
  readonly part: LinePart | null;
}

/** On top of every page: what it is of, the water and top of levee, what elevations count from, what must be fixed. */
export function TitleBlock({ page, part, ...frame }: TitleBlockProps) {
  const { of, label } = frame;
  const { plan, line } = of;
  return (
    <header class="title-block">
      <div class="title-row">
        <p class="title-letter">{letterOfLine(plan, line.id)}</p>
        <p class="title-site">
          <strong>{plan.title}</strong>
          <br />
          {lineBuiltWords(plan, line, of.system)}
        </p>
        <p class="title-sheet">
          <strong>{label}</strong>
          <br />
          {page}
        </p>
      </div>
      <TitleCells cells={headCells(frame)} />
      <p class="title-notes">{headNotes(frame)}</p>
      <LineBand of={of} part={part} />
    </header>
  );
}

interface TitleCellsProps {
  readonly cells: readonly HeadCell[];
}

/** The figures that a page counts from, each with its name and what is to be known of it. */
export function TitleCells({ cells }: TitleCellsProps) {
  return (
    <dl class="title-cells">
      {cells.map(({ name, value, note }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <strong>{value}</strong>
            <br />
            {note}
          </dd>
        </div>
      ))}
    </dl>
  );
}
