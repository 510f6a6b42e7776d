import type { VerticalUnit } from "../../shared/plan.ts";
import { Misuse } from "./verb.ts";

const UNITS: ReadonlyMap<string, VerticalUnit> = new Map([
  ["m", "metre"],
  ["ft", "foot"],
  ["us-ft", "us-survey-foot"],
]);

/** The unit that an option names; null when it is not given. @throws Misuse for any other word */
export function unitFrom(
  word: string | undefined,
  option = "--vertical-unit",
): VerticalUnit | null {
  if (word === undefined) return null;
  const unit = UNITS.get(word);
  if (unit) return unit;
  throw new Misuse(`${option} is one of ${[...UNITS.keys()].join(", ")}; came ${word}.`);
}
