import type { Structure } from "../../../shared/plan.ts";
import { isProtected } from "../../../shared/protected.ts";
import { floorWords, leftOutsideWords } from "../../../shared/words/buildings.ts";
import { changeListed, nameIn } from "../../document/edits/listed.ts";
import { plan } from "../../document/store.ts";
import { askNextBuilding } from "../../live/next-building.ts";
import { unitSystem } from "../../live/screen.ts";
import { tracedLine, waterNow } from "../../live/water-now.ts";
import { NumberField } from "../../ui/number-field.tsx";
import { ELEVATION } from "../../ui/quantity.ts";
import { NameRow } from "../name-row.tsx";
import { BuildingWays } from "./building-ways.tsx";
import { FootprintList } from "./footprint-list.tsx";
import { TypedPlace } from "./typed-place.tsx";

/** The buildings, which of them are left outside, and how the sized-for water stands to a known floor. */
export function StructuresList() {
  const { structures } = plan.value;
  return (
    <section class="buildings" aria-label="Buildings" tabIndex={-1}>
      <h3>Buildings</h3>
      <div class="tool-row">
        <BuildingWays />
        {plan.value.alignments.length > 0 && (
          <button type="button" class="tool-button" onClick={askNextBuilding}>
            Next building, same river
          </button>
        )}
      </div>
      <FootprintList />
      <TypedPlace />
      <ul class="plain-list">
        {structures.map((structure) => (
          <li key={structure.id} class="building">
            <NameRow
              list="structures"
              entry={structure}
              label="Name of the building"
              unnamed="this building"
            >
              <NumberField
                system={unitSystem.value}
                label={`Floor`}
                value={structure.floorM}
                quantity={ELEVATION}
                range={{ least: -500, most: 9000 }}
                blank="not known"
                onValue={(floorM, gesture) => {
                  const note = `Set the floor of ${nameIn("structures", structure)}`;
                  return changeListed("structures", structure, { floorM }, { note, gesture });
                }}
              />
            </NameRow>
            <label class="check-line">
              <input
                type="checkbox"
                aria-label={`Leave ${structure.name || "this building"} outside`}
                checked={!isProtected(structure)}
                onChange={(event) => leaveOutside(structure, event.currentTarget.checked)}
              />
              Leave outside
            </label>
            <Standing structure={structure} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function leaveOutside(structure: Structure, isLeft: boolean): void {
  const name = nameIn("structures", structure);
  const note = isLeft ? `Leave ${name} outside` : `Protect ${name}`;
  changeListed("structures", structure, { protect: isLeft ? false : undefined }, { note });
}

/** How the sized-for water stands to its floor without the levee, and what becomes of it when left outside. */
function Standing({ structure }: { readonly structure: Structure }) {
  const traced = waterNow.value?.structures.find(({ id }) => id === structure.id);
  if (!traced) return null;
  const system = unitSystem.value;
  const floor = floorWords(traced, system);
  const words = [
    isProtected(structure) ? null : leftOutsideWords(traced, tracedLine.value, system),
    floor && `without the levee, ${floor}`,
  ].filter((each) => each !== null);
  return words.length > 0 ? <p class="hint">{words.map(sentence).join(" ")}</p> : null;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
