import type { Check } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { checkWords } from "../../shared/words/checks.ts";

/** What a check says of its place and what was found. */
export function messageOf(check: Check | undefined, system: UnitSystem = "us"): string {
  return check ? checkWords(check, system).message : "";
}

/** What a check says to do. */
export function remedyOf(check: Check | undefined, system: UnitSystem = "us"): string {
  return check ? checkWords(check, system).remedy : "";
}

/** A check with its words beside its figures. */
export function withWords(check: Check, system: UnitSystem = "us") {
  return { ...check, ...checkWords(check, system), where: check.where };
}
