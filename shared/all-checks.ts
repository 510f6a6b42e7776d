import type { Check, SizedLine } from "./sizing-types.ts";
import type { WaterTrace } from "./water-types.ts";

/**
 * Every check of a line: its own, those of the water with it built, and those of the whole plan. One cause counts
 * once: that no ground is under water is left out where the line says of itself that water and ground do not belong
 * together, and that water comes in through pipes where each of them is a Must fix of the line already.
 * @param trace null while the water is not traced
 */
export function allChecks(
  { id, checks }: Pick<SizedLine, "id" | "checks">,
  trace: Pick<WaterTrace, "alternatives" | "checks"> | null,
): readonly Check[] {
  if (!trace) return checks;
  const open = new Set(checks.flatMap(({ finding }) => openPipe(finding) ?? []));
  const ofLine = (trace.alternatives.find((each) => each.id === id)?.checks ?? []).filter(
    ({ finding }) =>
      finding.kind !== "let-in-by-pipe" || !finding.pipes.every(({ pipeId }) => open.has(pipeId)),
  );
  const isDoubted = checks.some((each) => isStop(each, "water-level"));
  const ofPlan = trace.checks.filter((each) => !isDoubted || !isStop(each, "no-water"));
  return [...checks, ...ofLine, ...ofPlan];
}

/** The pipe that a Must fix of the line is about; null for others. */
function openPipe(finding: Check["finding"]): string | null {
  return finding.kind === "culvert-open" || finding.kind === "drain-open" ? finding.pipeId : null;
}

function isStop({ severity, finding }: Check, kind: Check["finding"]["kind"]): boolean {
  return severity === "stop" && finding.kind === kind;
}
