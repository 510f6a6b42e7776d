import { FOOT_M } from "../../shared/constants.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { Misuse } from "./verb.ts";

const MOST_STAGES = 200;
const RANGE = /^(-?\d+(?:\.\d+)?):(-?\d+(?:\.\d+)?):(\d+(?:\.\d+)?)$/;
/** A last stage that is off by no more than this share of a step is in the range. */
const SLACK = 1e-6;

/** The stages of `28:34:0.5`, meters, rising. @throws Misuse for anything else, or too many */
export function stagesFrom(word: string, system: UnitSystem): number[] {
  const [from, to, step] = (RANGE.exec(word) ?? []).slice(1).map(Number);
  const count = Math.floor((to! - from!) / step! + SLACK) + 1;
  if (!(count >= 1 && count <= MOST_STAGES)) {
    throw new Misuse(
      `--stages is FROM:TO:STEP, such as 28:34:0.5, with FROM no higher than TO, a STEP above 0 and at most ${MOST_STAGES} stages; came ${word}.`,
    );
  }
  const unitM = system === "us" ? FOOT_M : 1;
  return Array.from({ length: count }, (_, k) => (from! + k * step!) * unitM);
}
