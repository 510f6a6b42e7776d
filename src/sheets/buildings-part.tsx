import type { Plan } from "../../shared/plan.ts";
import { isProtected } from "../../shared/protected.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { TracedStructure } from "../../shared/water-types.ts";
import { floorWords, leftOutsideWords } from "../../shared/words/buildings.ts";

interface BuildingsPartProps {
  readonly plan: Plan;
  /** The buildings without any levee; empty while that is not known. */
  readonly structures: readonly TracedStructure[];
  readonly system: UnitSystem;
}

/** On paper: which buildings are left outside, and how the sized-for water stands to the floors that are known. */
export function BuildingsPart({ plan, structures, system }: BuildingsPartProps) {
  const rows = structures
    .map((each) => ({ name: each.name, words: wordsOf(plan, each, system) }))
    .filter(({ words }) => words !== "");
  if (rows.length === 0) return null;
  return (
    <>
      <h3>Buildings</h3>
      <table class="sheet-table watch-table">
        <tbody>
          {rows.map(({ name, words }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{words}.</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function wordsOf(plan: Plan, traced: TracedStructure, system: UnitSystem): string {
  const structure = plan.structures.find(({ id }) => id === traced.id);
  const isLeft = structure !== undefined && !isProtected(structure);
  const floor = floorWords(traced, system);
  return [isLeft && leftOutsideWords(traced, system), floor && `without the levee, ${floor}`]
    .filter(Boolean)
    .join("; ");
}
