import "./reach-table.css";
import { hasOtherSections } from "../../shared/reaches.ts";
import type { Reach, SizedLine, Totals } from "../../shared/sizing-types.ts";
import {
  formatCount,
  formatLength,
  formatStation,
  formatVolume,
  type UnitSystem,
  volumeFigure,
  volumeUnit,
} from "../../shared/units.ts";
import { takenMaterials } from "../../shared/words/materials.ts";

interface ReachTableProps {
  readonly line: SizedLine;
  readonly system: UnitSystem;
  /** Takes the chainage of the middle of a reach that was pressed; left out on paper. */
  readonly onReach?: ((middleM: number) => void) | undefined;
}

/** Subtotals of the reaches between the chosen stations, by material; they add up to the line. */
export function ReachTable({ line, system, onReach }: ReachTableProps) {
  const { totals, reaches } = line;
  const namesSections = hasOtherSections(line);
  const isNarrow = onReach !== undefined && namesSections;
  const inColumns = isNarrow ? [] : takenMaterials(totals.materials, system);
  const figures = (of: Totals) => (
    <>
      <td>{formatLength(of.lengthM, system, 0)}</td>
      <td>{formatCount(of.bags)}</td>
      {!isNarrow && <td>{volumeFigure(of.sandM3, system)}</td>}
      {!isNarrow &&
        takenMaterials(of.materials, system, totals.materials).map(({ key, figure }) => (
          <td key={key}>{figure}</td>
        ))}
      <td>{formatLength(of.greatestHeightM, system)}</td>
    </>
  );
  return (
    <div class="table-scroll">
      <table class="reach-table">
        <caption class="unseen">Subtotals of the reaches</caption>
        <thead>
          <tr>
            <th scope="col">Reach</th>
            {namesSections && !isNarrow && (
              <th scope="col" class="reach-built">
                Built as
              </th>
            )}
            <th scope="col">Length</th>
            <th scope="col">Bags</th>
            {!isNarrow && <th scope="col">Sand, {volumeUnit(system)}</th>}
            {inColumns.map(({ key, head }) => (
              <th key={key} scope="col">
                {head}
              </th>
            ))}
            <th scope="col">Highest</th>
          </tr>
        </thead>
        <tbody>
          {reaches.map((reach) => (
            <tr key={reach.fromM}>
              <th scope="row">
                <ReachName reach={reach} system={system} onReach={onReach} />
                {isNarrow && <small class="reach-also">{builtWords(reach, system)}</small>}
              </th>
              {namesSections && !isNarrow && <td class="reach-built">{reach.sectionName}</td>}
              {figures(reach.totals)}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All</th>
            {namesSections && !isNarrow && <td />}
            {figures(totals)}
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

interface ReachNameProps extends Pick<ReachTableProps, "system" | "onReach"> {
  readonly reach: Reach;
}

function ReachName({ reach: { fromM, toM }, system, onReach }: ReachNameProps) {
  const words = `${formatStation(fromM, system)} to ${formatStation(toM, system)}`;
  if (!onReach) return <>{words}</>;
  return (
    <button type="button" class="reach-name" onClick={() => onReach((fromM + toM) / 2)}>
      {words}
    </button>
  );
}

/** What a reach is built as, and what it takes beside bags. */
function builtWords({ sectionName, totals }: Reach, system: UnitSystem): string {
  const sand = totals.sandM3 > 0 ? [`${formatVolume(totals.sandM3, system)} of sand`] : [];
  const others = takenMaterials(totals.materials, system)
    .filter(({ key }) => key !== "looseSandM3")
    .map(({ words }) => words);
  return `${sectionName}: ${[...sand, ...others].join(", ")}`;
}
