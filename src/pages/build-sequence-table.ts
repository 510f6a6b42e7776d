import type { Exported, Named } from "../../shared/exports/exported.ts";
import { recordsCsv } from "../../shared/exports/records-csv.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { hourText } from "../../shared/time/clock.ts";
import type { LineTime, WorkStretch } from "../../shared/time/types.ts";
import { formatStation, lengthIn, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { hourWords } from "../../shared/words/clock.ts";
import { mostSettlingFigure } from "../../shared/words/settling.ts";

/** What a cell of the build sequence is made of. */
export interface SequenceRow {
  readonly stretch: WorkStretch;
  readonly line: SizedLine;
  readonly time: LineTime;
  readonly system: UnitSystem;
}

/** One column of the build sequence. */
export interface SequenceColumn {
  /** As the file names it, without the unit. */
  readonly id: string;
  readonly title: string;
  unit(system: UnitSystem): string;
  value(row: SequenceRow, clock: Clock): string | number | null;
}

/** Writes an hour of the work: as a person reads it, or as a file has it (ISO 8601). */
type Clock = (startAt: string | null, hours: number) => string;

const none = () => "";

/** Columns of the build sequence. */
export const SEQUENCE_COLUMNS: readonly SequenceColumn[] = [
  { id: "step", title: "Step", unit: none, value: ({ stretch }) => stretch.order },
  {
    id: "from",
    title: "From",
    unit: none,
    value: ({ stretch, system }) => formatStation(stretch.fromM, system),
  },
  {
    id: "to",
    title: "To",
    unit: none,
    value: ({ stretch, system }) => formatStation(stretch.toM, system),
  },
  { id: "crew", title: "Crew", unit: none, value: ({ stretch }) => stretch.crew },
  {
    id: "first_bag",
    title: "First bag",
    unit: none,
    value: ({ stretch, time }, clock) => hour(stretch.startH, time, clock),
  },
  {
    id: "last_bag",
    title: "Last bag",
    unit: none,
    value: ({ stretch, time }, clock) => hour(stretch.finishH, time, clock),
  },
  { id: "bags", title: "Bags", unit: none, value: ({ stretch }) => Math.round(stretch.bags) },
  {
    id: "lay_bags_higher_by",
    title: "Lay bags higher by",
    unit: lengthUnit,
    value: ({ stretch: { fromM, toM }, line, system }) =>
      mostSettlingFigure(line, fromM, toM, system),
  },
  {
    id: "water_comes",
    title: "Water comes",
    unit: none,
    value: ({ stretch: { wetH }, time }, clock) => {
      if (wetH !== null) return hour(wetH, time, clock);
      return time.verdicts.length > 0 ? "not in the forecast" : null;
    },
  },
  {
    id: "least_top_above_water",
    title: "Top above water, least",
    unit: lengthUnit,
    value: ({ stretch: { leastAheadM }, system }) =>
      leastAheadM === null
        ? null
        : lengthIn(leastAheadM, system)
            .toFixed(1)
            .replace(/^-0\.0$/, "0.0"),
  },
];

/** True for the column that says how near the water comes. */
export function isAhead({ id }: SequenceColumn): boolean {
  return id === "least_top_above_water";
}

/** A cell as a person reads it on paper. */
export function paperValue(column: SequenceColumn, row: SequenceRow): string | number | null {
  const clock: Clock = (startAt, hours) => hourWords(startAt, hours, row.system, { long: true });
  return column.value(row, clock);
}

/** True where the top of a stretch comes nearer to the water than is required, before it is done. */
export function isBehind({ leastSpareM }: WorkStretch): boolean {
  return leastSpareM !== null && leastSpareM < 0;
}

/** Stretches as they are built. */
export function inSequence({ stretches }: LineTime): WorkStretch[] {
  return [...stretches].sort((a, b) => a.order - b.order);
}

/** The build sequence as CSV: slow pace, times as the forecast writes them (ISO 8601). */
export function buildSequenceCsv(exported: Exported, time: LineTime): string {
  const { line, system } = exported;
  const head = SEQUENCE_COLUMNS.map(({ id, unit }) =>
    unit(system) ? `${id}_${unit(system)}` : id,
  );
  const records = inSequence(time).map(
    (stretch): Named =>
      Object.fromEntries(
        SEQUENCE_COLUMNS.map((column, i) => [
          head[i],
          column.value({ stretch, line, time, system }, hourText),
        ]),
      ),
  );
  return recordsCsv(exported, "Stretch", head, records);
}

function hour(hours: number | null, { startAt, missing }: LineTime, clock: Clock): string {
  if (hours === null) return missing.length > 0 ? "not known" : "not within a year";
  return clock(startAt, hours);
}
