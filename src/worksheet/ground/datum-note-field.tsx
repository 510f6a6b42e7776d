import { edit } from "../../document/edits/alternatives.ts";
import { plan } from "../../document/store.ts";
import { TextField } from "../../ui/text-field.tsx";

/** The vertical datum of the ground as the person knows it, where the file does not state it. */
export function DatumNoteField() {
  return (
    <TextField
      label="Vertical datum of the elevation data, as you know it"
      placeholder="e.g. NAVD 88"
      maxLength={500}
      value={plan.value.ground.datumNote}
      onText={(datumNote) =>
        edit({
          note: "Note the datum of the elevation data",
          change: (now) => ({ ...now, ground: { ...now.ground, datumNote } }),
        })
      }
    />
  );
}
