import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import { formatSetting } from "../setting-text.ts";
import { missingCrew } from "../time/crew-inputs.ts";
import { formatCount, type UnitSystem } from "../units.ts";
import { crewInputWords } from "./crew.ts";

/** Who works when: `60 people, 2 shifts of 12 h, lit`, or what is still to be typed. */
export function workHoursWords(plan: Plan, system: UnitSystem): string {
  const { shifts, shiftH, lit } = timeOf(plan);
  const missing = missingCrew(plan);
  if (missing.length > 0) return `type ${crewInputWords(missing)}`;
  const hours = formatSetting("hours", shiftH, system);
  const turns = shifts === 1 ? `1 shift of ${hours}` : `${shifts} shifts of ${hours}`;
  return `${formatCount(plan.practice.people!)} people, ${turns}${lit ? ", lit" : ""}`;
}
