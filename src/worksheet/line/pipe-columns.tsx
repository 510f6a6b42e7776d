import {
  NO_PIPE_COLUMNS,
  type PipeColumns,
  SIZE_UNITS,
  type SizeUnit,
} from "../../../shared/imports/into-ways.ts";
import type { VerticalUnit } from "../../../shared/plan.ts";
import { HEIGHT_UNIT_WORDS } from "../../../shared/words/ground-line.ts";
import { PIPE_COLUMN_WORDS, SIZE_UNIT_WORDS } from "../../../shared/words/shapes.ts";
import { PickRow } from "../../ui/pick-row.tsx";

const HEIGHT_UNITS: readonly VerticalUnit[] = ["foot", "us-survey-foot", "metre"];
const SIZES = Object.keys(SIZE_UNITS) as SizeUnit[];

interface PipeColumnPicksProps {
  /** Columns that hold figures. */
  readonly figures: readonly string[];
  readonly picked: PipeColumns;
  readonly onPick: (picked: PipeColumns) => void;
}

/** Which columns of a file say the inverts and the size of its pipes, and in which unit. */
export function PipeColumnPicks({ figures, picked, onPick }: PipeColumnPicksProps) {
  const { firstInvert, lastInvert, invertUnit, size, sizeUnit } = picked;
  const change = (next: Partial<PipeColumns>) => onPick({ ...NO_PIPE_COLUMNS, ...picked, ...next });
  return (
    <div class="pipe-columns">
      <PickRow
        label={PIPE_COLUMN_WORDS.firstInvert}
        value={firstInvert}
        options={figures}
        onPick={(column) => change({ firstInvert: column })}
        none={PIPE_COLUMN_WORDS.none}
      />
      <PickRow
        label={PIPE_COLUMN_WORDS.lastInvert}
        value={lastInvert}
        options={figures}
        onPick={(column) => change({ lastInvert: column })}
        none={PIPE_COLUMN_WORDS.none}
      />
      {(firstInvert ?? lastInvert) !== null && (
        <PickRow
          label={PIPE_COLUMN_WORDS.invertsIn}
          none={PIPE_COLUMN_WORDS.chooseUnit}
          value={invertUnit}
          options={HEIGHT_UNITS}
          words={(unit) => HEIGHT_UNIT_WORDS[unit]}
          onPick={(unit) => change({ invertUnit: unit })}
        />
      )}
      <PickRow
        label={PIPE_COLUMN_WORDS.size}
        value={size}
        options={figures}
        onPick={(column) => change({ size: column })}
        none={PIPE_COLUMN_WORDS.none}
      />
      {size !== null && (
        <PickRow
          label={PIPE_COLUMN_WORDS.sizesIn}
          none={PIPE_COLUMN_WORDS.chooseUnit}
          value={sizeUnit}
          options={SIZES}
          words={(unit) => SIZE_UNIT_WORDS[unit]}
          onPick={(unit) => change({ sizeUnit: unit })}
        />
      )}
    </div>
  );
}
