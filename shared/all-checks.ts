import type { Check, SizedLine } from "./sizing-types.ts";
import type { WaterTrace } from "./water-types.ts";

/**
 * Every check of a line: its own, those of the water with it built, and those of the whole plan. One cause counts
 * once: that no ground is under water is left out where the line says of itself that water and ground do not belong
 * together.
 * @param trace null while the water is not traced
 */
export function allChecks(
  { id, checks }: Pick<SizedLine, "id" | "checks">,
  trace: Pick<WaterTrace, "alternatives" | "checks"> | null,
): readonly Check[] {
  if (!trace) return checks;
  const ofLine = trace.alternatives.find((each) => each.id === id)?.checks ?? [];
  const isDoubted = checks.some((each) => isStop(each, "water-level"));
  const ofPlan = trace.checks.filter((each) => !isDoubted || !isStop(each, "no-water"));
  return [...checks, ...ofLine, ...ofPlan];
}

function isStop({ severity, finding }: Check, kind: Check["finding"]["kind"]): boolean {
  return severity === "stop" && finding.kind === kind;
}
