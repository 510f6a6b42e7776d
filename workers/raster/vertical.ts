import { refusal } from "../../shared/failure.ts";
import type { VerticalUnit } from "../../shared/plan.ts";
import { metresPer } from "../../shared/vertical-unit.ts";

const UNIT_NAMES: readonly (readonly [RegExp, VerticalUnit])[] = [
  [/^(m|met(re|er)s?)$/i, "metre"],
  [
    /^(us[ _-]?survey[ _-]?f(oo|ee)t|us[ _-]?f(oo|ee)t|ft[ _-]?us|us[ _-]?ft|foot[ _-]?us|survey[ _-]?f(oo|ee)t)$/i,
    "us-survey-foot",
  ],
  [/^(ft|f(oo|ee)t|international[ _-]?f(oo|ee)t)$/i, "foot"],
];

/**
 * The unit a file names in words.
 * @returns null for an empty name, which states nothing
 * @throws Refusal `ground/unit-unsupported` for a unit that is not one of ours
 */
export function unitByName(fileName: string, text: string): VerticalUnit | null {
  const name = text.trim();
  if (name === "") return null;
  const known = UNIT_NAMES.find(([pattern]) => pattern.test(name));
  if (!known) throw refusal("ground/unit-unsupported", { name: fileName, unit: name });
  return known[1];
}

/** The unit of a factor to metres, exact enough to tell the two feet apart. Null when it is none of ours. */
export function unitByFactor(metres: number): VerticalUnit | null {
  const units: readonly VerticalUnit[] = ["metre", "foot", "us-survey-foot"];
  return units.find((unit) => Math.abs(metresPer(unit) / metres - 1) < 1e-7) ?? null;
}
