import { plan } from "../document/store.ts";
import { Icon } from "../ui/icons.tsx";
import { NumberField } from "../ui/number-field.tsx";
import { ELEVATION } from "../ui/quantity.ts";
import { TextField } from "../ui/text-field.tsx";
import { changeStructure, deleteStructure } from "./site-edits.ts";

/** The buildings to keep dry, with their lowest floor where it is known. */
export function StructuresList() {
  const { structures } = plan.value;
  if (structures.length === 0) return null;
  return (
    <section aria-label="Buildings">
      <h3>Buildings</h3>
      <ul class="plain-list">
        {structures.map((structure) => (
          <li key={structure.id} class="named-row">
            <TextField
              label="Name of the building"
              labelHidden
              value={structure.name}
              placeholder="name"
              onText={(name) => {
                changeStructure(structure, `Rename ${structure.name || "building"}`, { name });
              }}
            />
            <NumberField
              label={`Floor`}
              value={structure.floorM}
              quantity={ELEVATION}
              range={{ least: -500, most: 9000 }}
              blank="not known"
              onValue={(floorM, gesture) =>
                changeStructure(
                  structure,
                  `Set the floor of ${structure.name || "building"}`,
                  { floorM },
                  gesture,
                )
              }
            />
            <button
              type="button"
              class="icon-button"
              aria-label={`Delete ${structure.name || "this building"}`}
              onClick={() => deleteStructure(structure)}
            >
              <Icon name="trash" />
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
