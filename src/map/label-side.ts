import type { ExpressionSpecification } from "maplibre-gl";
import { DIRECTIONS, type LabelReach, labelOffset } from "../drawing/line/label-offset.ts";

/** `text-offset` of labels whose features have a `direction` (label-offset.ts). */
export function offsetByDirection(reach: LabelReach): ExpressionSpecification {
  const cases = Array.from({ length: DIRECTIONS }, (_, direction) => [
    direction,
    ["literal", labelOffset(direction, reach)],
  ]).flat();
  return [
    "match",
    ["get", "direction"],
    ...cases,
    ["literal", [0, 0]],
  ] as unknown as ExpressionSpecification;
}
