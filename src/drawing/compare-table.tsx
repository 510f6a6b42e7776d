import { type ComparedLine, compareLines, MEASURES, type Measure } from "../../shared/compare.ts";
import { isComplete, isCounted } from "../../shared/completeness.ts";
import { letterOf } from "../../shared/line-letter.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine, Totals } from "../../shared/sizing-types.ts";
import {
  formatCount,
  formatHours,
  formatLength,
  formatVolume,
  shownHours,
  shownLengthM,
  shownVolumeM3,
  type UnitSystem,
} from "../../shared/units.ts";
import type { TracedAlternative } from "../../shared/water-types.ts";
import { besideBagsWords } from "../../shared/words/counted.ts";
import { notKnownBecause } from "../../shared/words/dry.ts";
import { takenMaterials } from "../../shared/words/materials.ts";
import { dryWords, firstOverWords } from "../../shared/words/water.ts";
import "./compare-table.css";
import { type CompareWords, stabilityCell, timeCell } from "../../shared/words/compare.ts";
import { gapLength } from "../../shared/words/ground-gap.ts";

type Write = (value: number, system: UnitSystem) => string;

const NAMES: Readonly<Record<Measure, string>> = {
  lengthM: "Length",
  bags: "Bags",
  sandM3: "Sand",
  greatestHeightM: "Greatest height",
  lengthOverLimitM: "Over the height limit",
  jobPersonHours: "Person-hours",
};

const WRITERS: Readonly<Record<Measure, Write>> = {
  lengthM: (value, system) => formatLength(value, system, 0),
  bags: (value) => formatCount(value),
  sandM3: formatVolume,
  greatestHeightM: (value, system) => formatLength(value, system),
  lengthOverLimitM: (value, system) => formatLength(value, system, 0),
  jobPersonHours: (value) => formatHours(value),
};

/** What of a measure is shown, in SI: differences are of these. */
const SHOWN: Readonly<Partial<Record<Measure, (value: number, system: UnitSystem) => number>>> = {
  lengthM: (value, system) => shownLengthM(value, system, 0),
  sandM3: shownVolumeM3,
  jobPersonHours: shownHours,
  greatestHeightM: (value, system) => shownLengthM(value, system),
  lengthOverLimitM: (value, system) => shownLengthM(value, system, 0),
};

interface CompareTableProps {
  readonly plan: Plan;
  readonly lines: readonly SizedLine[];
  readonly chosen: string | null;
  readonly system: UnitSystem;
  /** The water with each alternative built; left out while that is not known. */
  readonly traced: ReadonlyMap<string, TracedAlternative>;
  /** How many things must be fixed on a line, by all that is known of it. */
  readonly mustFixOn: (line: SizedLine) => number;
  /** Called when a name is pressed; names are plain text without it, as on paper. */
  readonly onChoose?: (id: string) => void;
}

/** Lines side by side, with differences to the chosen one. */
export function CompareTable(props: CompareTableProps) {
  const { plan, lines, chosen, system, traced, mustFixOn, onChoose } = props;
  const rows = compareLines(lines, chosen, mustFixOn);
  return (
    <table class="compare">
      <caption>Differences are to the chosen line. {leastWords(rows)}</caption>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Must fix</th>
          {MEASURES.map((measure) => (
            <th key={measure} scope="col">
              {NAMES[measure]}
            </th>
          ))}
          <th scope="col">Overland path in</th>
          <th scope="col">Overtops above</th>
          <th scope="col">Sliding, overturning</th>
          <th scope="col">Time</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          <tr key={row.id} data-chosen={row.id === chosen}>
            <th scope="row">
              <span class="letter">{letterIn(plan, row.id)}</span>
              {onChoose ? (
                <button type="button" class="text-button" onClick={() => onChoose(row.id)}>
                  {lines[index]!.name}
                </button>
              ) : (
                lines[index]!.name
              )}
            </th>
            <td>{row.mustFix > 0 ? <strong>{row.mustFix}</strong> : "none"}</td>
            {MEASURES.map((measure) => (
              <CompareCell
                key={measure}
                row={row}
                measure={measure}
                system={system}
                line={lines[index]!}
              />
            ))}
            <WaterCells
              plan={plan}
              line={traced.get(row.id)}
              gap={gapLength(lines[index]!, system)}
              system={system}
            />
            <WordsCell of={stabilityCell(lines[index]!, system, row.mustFix)} />
            <WordsCell of={timeCell(lines[index]!, system, row.mustFix)} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function letterIn(of: Plan, id: string): string {
  return letterOf(of.alignments.findIndex((each) => each.id === id));
}

interface WaterCellsProps {
  readonly plan: Plan;
  readonly line: TracedAlternative | undefined;
  /** How much of it runs over ground that is not known; null where nothing does. */
  readonly gap: string | null;
  readonly system: UnitSystem;
}

function WaterCells({ plan, line, gap, system }: WaterCellsProps) {
  if (!line) {
    return (
      <>
        <td>not traced</td>
        <td>–</td>
      </>
    );
  }
  const above = line.dry === null ? null : firstOverWords(line, plan, system);
  return (
    <>
      <td class={gap || line.notKnown ? "compare-words" : undefined}>
        {dryWords(line)}
        {line.notKnown ? (
          <small>{notKnownBecause(line)}</small>
        ) : (
          gap && <small>but for {gap} without elevation data</small>
        )}
      </td>
      <td>{above ?? "–"}</td>
    </>
  );
}

/** A verdict, and what it rests on below it. */
function WordsCell({ of }: { readonly of: CompareWords }) {
  return (
    <td class="compare-words">
      {of.isBad ? <strong>{of.word}</strong> : of.word}
      {of.why && <small>{of.why}</small>}
    </td>
  );
}

interface CompareCellProps {
  readonly row: ComparedLine;
  readonly measure: Measure;
  readonly system: UnitSystem;
  readonly line: SizedLine;
}

/** Which lines the marks of the least are for. */
function leastWords(rows: readonly ComparedLine[]): string {
  return rows.some(({ best }) => best.size > 0)
    ? "The least of each column is marked •, of the lines that are counted in full and have no Must fix."
    : "No line is marked as the least: each has a Must fix or is not counted in full.";
}

/** What goes with bags: for how much of the line they are, and what a line of other sections takes instead. */
function besideBags(totals: Totals, system: UnitSystem): string {
  const counted = isComplete(totals) ? "" : besideBagsWords(totals, system);
  const taken = takenMaterials(totals.materials, system).map(({ words }) => words);
  return [counted, taken.length === 0 ? "" : `and ${taken.join(", ")}`].filter(Boolean).join("; ");
}

function CompareCell({ row, measure, system, line }: CompareCellProps) {
  const write = WRITERS[measure];
  const difference = row.differences?.[measure];
  const beside = measure === "bags" ? besideBags(line.totals, system) : "";
  const isPart = !row.isWhole && measure !== "lengthM";
  const isKnown = !isPart || isCounted(line);
  return (
    <td>
      {row.best.has(measure) && <span title="least">• </span>}
      {isPart && isKnown && measure !== "bags" && "at least "}
      {isKnown ? write(row.values[measure], system) : "not known"}
      {difference !== undefined && (
        <small>{signed(shownDifference(row, measure, system), write, system)}</small>
      )}
      {beside && <small class="compare-beside">{beside}</small>}
    </td>
  );
}

/** This line's figure less the chosen one's, both as they are shown. */
function shownDifference(
  { values, differences }: ComparedLine,
  measure: Measure,
  system: UnitSystem,
) {
  const difference = differences![measure];
  const shown = SHOWN[measure];
  if (!shown) return difference;
  return shown(values[measure], system) - shown(values[measure] - difference, system);
}

function signed(difference: number, write: Write, system: UnitSystem): string {
  if (Number.isNaN(difference)) return "";
  const size = write(Math.abs(difference), system);
  if (size === write(0, system)) return "same";
  return `${difference > 0 ? "+" : "−"}${size}`;
}
