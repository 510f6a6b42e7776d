import * as v from "valibot";
import type { Culvert, Drain, PossibleCulvert } from "../plan.ts";
import { fields, oneOf, quantity, yesOrNo } from "../plan-makers.ts";
import { corners, id, lonLat, name } from "../plan-schema.ts";
import { invertsWords } from "../words/refusals/plan-values.ts";

type Schema<T> = v.GenericSchema<unknown, T>;

/** What can shut a culvert. */
const GATES = ["none", "flap", "gate"] as const;
const ANSWERS = ["no", "look"] as const;
const DRAIN_KINDS = ["floor-drain", "storm-inlet", "sewer"] as const;

/** Smallest and largest size of a culvert, metres: they only keep out slips. */
const SIZE_M = [0.02, 10] as const;

/** Lowest and highest invert, metres: as for the elevations of the water. */
const INVERT_M = [-500, 9000] as const;

const inverts = v.custom<Culvert["invertsM"]>(
  (value) => Array.isArray(value) && value.length === 2 && value.every(isInvert),
  ({ input }) => invertsWords(INVERT_M, input),
);

function isInvert(value: unknown): boolean {
  if (value === null) return true;
  return typeof value === "number" && value >= INVERT_M[0] && value <= INVERT_M[1];
}

/** A culvert of the plan. */
export const CULVERT = fields("a culvert", {
  id,
  name,
  path: corners("points of the culvert", 2, false),
  invertsM: inverts,
  sizeM: v.nullable(quantity("the size of the culvert (sizeM)", ...SIZE_M, "m")),
  gate: v.nullable(oneOf("what shuts the culvert (gate)", GATES)),
  plugged: yesOrNo("whether the culvert is plugged (plugged)"),
}) as Schema<Culvert>;

/** A possible culvert of the plan. */
export const POSSIBLE_CULVERT = fields("a possible culvert", {
  id,
  name,
  path: corners("points of the possible culvert", 2, false),
  answer: oneOf("what is said of the possible culvert (answer)", ANSWERS),
}) as Schema<PossibleCulvert>;

/** A drain of the plan. */
export const DRAIN = fields("a drain", {
  id,
  name,
  at: lonLat,
  kind: oneOf("the kind of drain (kind)", DRAIN_KINDS),
  joinsOutside: v.nullable(yesOrNo("whether the drain joins outside (joinsOutside)")),
  plugged: yesOrNo("whether the drain is plugged (plugged)"),
}) as Schema<Drain>;
