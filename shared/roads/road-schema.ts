import type * as v from "valibot";
import type { ExitRoad } from "../plan.ts";
import { fields } from "../plan-makers.ts";
import { corners, id, name } from "../plan-schema.ts";

/** An exit road of the plan. */
export const ROAD = fields("an exit road", {
  id,
  name,
  path: corners("points of the road", 2, false),
}) as v.GenericSchema<unknown, ExitRoad>;
