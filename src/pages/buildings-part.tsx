import type { Plan } from "../../shared/plan.ts";
import { isProtected } from "../../shared/protected.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { TracedAlternative, TracedStructure } from "../../shared/water-types.ts";
import { floorWords, leftOutsideWords } from "../../shared/words/buildings.ts";

interface BuildingsPartProps {
  readonly plan: Plan;
  /** The buildings without any levee; empty while that is not known. */
  readonly structures: readonly TracedStructure[];
  /** The water with the line built; null while that is not known. */
  readonly traced: TracedAlternative | null;
  readonly system: UnitSystem;
}

/** On paper: which buildings are left outside, and how the sized-for water stands to the floors that are known. */
export function BuildingsPart({ plan, structures, traced, system }: BuildingsPartProps) {
  const rows = structures
    .map((each) => ({ name: each.name, words: wordsOf(plan, each, traced, system) }))
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

function wordsOf(
  plan: Plan,
  found: TracedStructure,
  line: TracedAlternative | null,
  system: UnitSystem,
): string {
  const structure = plan.structures.find(({ id }) => id === found.id);
  const isLeft = structure !== undefined && !isProtected(structure);
  const floor = floorWords(found, system);
  return [isLeft && leftOutsideWords(found, line, system), floor && `without the levee, ${floor}`]
    .filter(Boolean)
    .join("; ");
}
