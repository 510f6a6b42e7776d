import { edit } from "../document/edits/alternatives.ts";
import { readFootprintsOf } from "../document/files.ts";
import { tell } from "../document/notices.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";

/** Adds the buildings of a GeoJSON file to the plan; what is wrong with the file is said in a notice. */
export async function importFootprints(file: File): Promise<void> {
  const read = await readFootprintsOf(file, {
    present: plan.value.structures,
    within: ground.value?.bounds ?? null,
  });
  if (!read.ok) return tell("error", read.failure);
  for (const message of read.value.notes) {
    tell("info", { code: "footprints/note", message, remedy: "" });
  }
  edit({
    note: `Import ${file.name}`,
    change: (now) => ({ ...now, structures: [...now.structures, ...read.value.structures] }),
  });
}
