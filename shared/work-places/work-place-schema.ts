import * as v from "valibot";
import type { WorkPlace } from "../plan.ts";
import { fields, oneOf } from "../plan-makers.ts";
import { corners, id, name } from "../plan-schema.ts";
import { workPlaceWords } from "../words/refusals/plan-values.ts";

const KINDS = ["pile", "pumps", "truck-way"] as const;

/** A work place of the plan. */
export const WORK_PLACE = v.pipe(
  fields("a work place", {
    id,
    name,
    kind: oneOf("the kind of work place (kind)", KINDS),
    path: corners("points of the work place", 1, false),
  }),
  v.check(
    ({ kind, path }) => (kind === "truck-way" ? path.length > 1 : path.length === 1),
    ({ input: { kind, path } }) => workPlaceWords(kind, path.length),
  ),
) as v.GenericSchema<unknown, WorkPlace>;
