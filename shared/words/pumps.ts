import { INCH_M } from "../constants.ts";
import type { PumpKind, PumpOption } from "../holding/types.ts";
import type { UnitSystem } from "../units.ts";
import { formatFlow } from "../units.ts";
import type { Units } from "./units.ts";
import { unitsOf } from "./units.ts";

const NAMES: Readonly<Record<PumpKind, string>> = {
  sump: "sump pump",
  diaphragm: "diaphragm pump",
  centrifugal: "centrifugal pump",
  trash: "trash pump",
};
/** Hoses as they are sold, inches. Source: PWM. */
const HOSES_IN: Readonly<Record<PumpKind, readonly [number, number] | null>> = {
  sump: null,
  diaphragm: [2, 3],
  centrifugal: [2, 4],
  trash: [2, 6],
};

/** `trash pump, 2 to 6 in` or `trash pump, 5.1 to 15 cm`. */
export function pumpWords(kind: PumpKind, units: Units): string {
  const hose = HOSES_IN[kind];
  if (!hose) return NAMES[kind];
  return `${NAMES[kind]}, ${units.smallRange(hose[0] * INCH_M, hose[1] * INCH_M)}`;
}

/** `4 working and 1 spare`. */
export function pumpCountWords({ working, spare }: Pick<PumpOption, "working" | "spare">): string {
  return `${working} working and ${spare === 0 ? "no spare" : `${spare} spare`}`;
}

/** `2 in trash pumps, at least 90 gpm each`. */
export function pumpEachWords({ kind, eachM3PerS }: PumpOption, system: UnitSystem): string {
  return `${pumpWords(kind, unitsOf(system))}, at least ${formatFlow(eachM3PerS, system)} each`;
}
