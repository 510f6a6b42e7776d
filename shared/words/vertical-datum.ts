import type { GroundSummary } from "../messages.ts";
import type { Plan } from "../plan.ts";

/** What elevations count from: as the elevation data states it, else as a person noted it. */
export function verticalDatumWords(
  { ground: { datumNote } }: Plan,
  ground: Pick<GroundSummary, "verticalDatum"> | null,
): string {
  const stated = ground?.verticalDatum;
  if (stated) return stated;
  return datumNote ? `${datumNote} (noted by hand)` : "vertical datum not stated";
}
