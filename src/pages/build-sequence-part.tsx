import { pxOf } from "./paper.ts";
import "./build-sequence.css";
import type { ComponentChildren } from "preact";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { CrewPart, LineTime } from "../../shared/time/types.ts";
import { formatCount, lengthUnit } from "../../shared/units.ts";
import {
  coursesCell,
  crewPaceWords,
  crewShareWords,
  crewsWords,
  doneWords,
  earlyWords,
  hasNeededHours,
  holdWords,
  isLateStep,
  neededWords,
  onHoldWords,
  type SequenceSaid,
} from "../../shared/words/build-sequence.ts";
import { CLOSURE_HEADS, closureRows } from "../../shared/words/closure-rows.ts";
import {
  crewName,
  layToFigure,
  ON_HOLD,
  stationsWords,
  stepName,
} from "../../shared/words/crew-parts.ts";
import { timeWords } from "../../shared/words/time.ts";
import { BuildSequenceNotes } from "./build-sequence-notes.tsx";
import { LiftPicture } from "./lift-picture.tsx";
import { type Rows, Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

/** Letters of an hour in the same week: with a date it is longer, and the table is set smaller, as in metric units. */
const SHORT_HOUR = 9;

interface BuildSequenceProps extends SheetFrame {
  readonly time: LineTime;
  /** Every line's result, to name those in time when this one is not. */
  readonly results: readonly SizedLine[];
}

/** For each crew what it lays in which order, when it must be done, and what is not to be built. */
export function BuildSequenceSheet({ time, results, ...frame }: BuildSequenceProps) {
  const { plan, line, system } = frame.of;
  const said = { plan, time, system };
  return (
    <Sheet
      {...frame}
      name="Build sequence by crew"
      short="Sequence"
      pieces={({ widthMm }) => [
        <Lead line={line} said={said} />,
        <LiftPicture of={frame.of} time={time} widthPx={Math.floor(pxOf(widthMm))} />,
        ...time.parts.map((part) => crewRows(part, said)),
        ...(time.closures.length > 0 ? [wayRows(said)] : []),
        <BuildSequenceNotes line={line} said={said} results={results} />,
      ]}
    />
  );
}

interface LeadProps {
  readonly line: SizedLine;
  readonly said: SequenceSaid;
}

/** Whether there is time, and the figures that crews are led by. */
function Lead({ line, said }: LeadProps) {
  const { time, system } = said;
  const { crew } = time;
  const cells = [
    { value: formatCount(time.bags), note: "bags to lay, in all steps" },
    ...(crew
      ? [
          { value: crewsWords(crew), note: crewShareWords(crew) },
          { value: crewPaceWords(crew), note: "bags an hour a crew, slow–fast" },
          { value: doneWords(time.finishSlowH, said), note: "last bag at the slow pace" },
        ]
      : []),
  ];
  return (
    <>
      <p class="build-verdict">
        <strong>{timeWords(line, system)}.</strong> {onHoldWords(time)}
      </p>
      <dl class="title-cells build-cells">
        {cells.map(({ value, note }) => (
          <div key={note}>
            <dd>
              <strong>{value}</strong>
              <br />
              {note}
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}

/** One crew's table: what is on HOLD, then its steps, with a box to tick. */
function crewRows(part: CrewPart, said: SequenceSaid): Rows {
  const { system, time } = said;
  const columns = columnsFor(said);
  const isWide =
    system === "metric" ||
    part.steps.some(({ finishSlowH }) => doneWords(finishSlowH, said).length > SHORT_HOUR);
  const holds = part.holds.map((hold) => (
    <tr key={`hold ${hold.fromM}`} class="build-hold">
      <th scope="row">{ON_HOLD}</th>
      <td>{stationsWords(hold, system)}</td>
      <td colSpan={columns.length - 2}>
        do not build, <strong>{formatCount(hold.bags)} bags</strong>: {holdWords(hold, said)}
      </td>
      <td>
        <Box />
      </td>
    </tr>
  ));
  const steps = part.steps.map((step) => (
    <tr key={step.number}>
      <th scope="row">{stepName(part, step.number)}</th>
      {columns.slice(1).map(({ title, cell }) => (
        <td key={title} data-column={title}>
          {cell(step)}
        </td>
      ))}
      <td>
        <Box />
      </td>
    </tr>
  ));
  return {
    rows: [...holds, ...steps],
    around: (rows, goesOn) => (
      <section aria-label={crewName(part)}>
        <h2 class="build-crew">
          {crewName(part)}
          {goesOn && ", continued"}
          <span>
            {stationsWords(part, system)}, {formatCount(part.bags)} bags
          </span>
        </h2>
        <BuildTable
          class="sheet-table"
          titles={columns.map(({ title }) => title)}
          data-timed={hasNeededHours(time)}
          data-wide={isWide}
        >
          {rows}
        </BuildTable>
      </section>
    ),
  };
}

/** The ways left open: who closes each from when on, and by when it must be done. */
function wayRows(said: SequenceSaid): Rows {
  const { title, ...heads } = CLOSURE_HEADS;
  const columns = Object.entries(heads) as [keyof typeof heads, string][];
  return {
    rows: closureRows(said).map((row) => (
      <tr key={row.name}>
        <th scope="row">{row.name}</th>
        {columns.slice(1).map(([key, head]) => (
          <td key={key} data-column={head}>
            <span class={key === "state" && row.isLate ? "build-late" : ""}>{row[key]}</span>
          </td>
        ))}
        <td>
          <Box />
        </td>
      </tr>
    )),
    around: (rows) => (
      <section aria-label={title}>
        <h2 class="build-crew">{title}</h2>
        <BuildTable class="sheet-table build-ways" titles={columns.map(([, head]) => head)}>
          {rows}
        </BuildTable>
      </section>
    ),
  };
}

interface BuildTableProps {
  readonly class: string;
  readonly titles: readonly string[];
  readonly "data-timed"?: boolean;
  readonly "data-wide"?: boolean;
  readonly children: ComponentChildren;
}

/** Rows of the sequence under their titles, the last column to tick. */
function BuildTable({ titles, children, ...rest }: BuildTableProps) {
  return (
    <table data-table="build-sequence" {...rest}>
      <thead>
        <tr>
          {titles.map((title) => (
            <th key={title} scope="col" data-column={title}>
              {title}
            </th>
          ))}
          <th scope="col" aria-label="Done">
            ✓
          </th>
        </tr>
      </thead>
      <tbody data-rows>{children}</tbody>
    </table>
  );
}

interface Column {
  readonly title: string;
  readonly cell: (step: CrewPart["steps"][number]) => ComponentChildren;
}

/** Columns between the step's name and its box; without a forecast none of time, and the stage that needs the step. */
function columnsFor(said: SequenceSaid): Column[] {
  const { system, time } = said;
  const isTimed = hasNeededHours(time) || time.missing.length > 0;
  return [
    { title: "Step", cell: () => "" },
    { title: "Stations", cell: (step) => stationsWords(step, system) },
    { title: `Lay up to, ${lengthUnit(system)}`, cell: (step) => layToFigure(step, system) },
    { title: "Courses", cell: coursesCell },
    { title: "Bags", cell: ({ bags }) => formatCount(bags) },
    ...(isTimed
      ? [
          {
            title: "Done, slow",
            cell: ({ finishSlowH }: { finishSlowH: number | null }) => doneWords(finishSlowH, said),
          },
          {
            title: "Done, fast",
            cell: ({ finishFastH }: { finishFastH: number | null }) => doneWords(finishFastH, said),
          },
        ]
      : []),
    { title: "Needed by", cell: (step) => neededWords(step, said) },
    ...(hasNeededHours(time)
      ? [
          {
            title: "At slow pace",
            cell: (step: CrewPart["steps"][number]) => <Early of={step} time={time} />,
          },
        ]
      : []),
  ];
}

interface EarlyProps {
  readonly of: CrewPart["steps"][number];
  readonly time: LineTime;
}

function Early({ of: step, time }: EarlyProps) {
  return <span class={isLateStep(step) ? "build-late" : ""}>{earlyWords(step, time)}</span>;
}

/** A box to tick by hand. */
function Box() {
  return <span class="build-box" />;
}
