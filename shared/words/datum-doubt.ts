import type { DatumDoubt } from "../messages.ts";
import { formatLength, type UnitSystem } from "../units.ts";

/** How far elevation data may lie off other maps, because of how its datum was brought to WGS 84. */
export function datumDoubtWords(doubt: DatumDoubt, system: UnitSystem): string {
  if (doubt.kind === "by-own-shift") {
    return "Its datum is brought to WGS 84 by the shift written in the file, which does not say how good it is. Check the place against another map before you build by it. Elevations are not affected.";
  }
  const errorSaid = formatLength(doubt.errorM, system, 0);
  return doubt.kind === "taken-as-equal"
    ? `Its datum is taken as equal to WGS 84, from which it differs by up to about ${errorSaid}.`
    : `Its datum is brought to WGS 84 by average parameters, without a grid: positions against other maps are good to about ${errorSaid}. Elevations are not affected.`;
}
