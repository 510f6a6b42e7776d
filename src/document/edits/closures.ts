import type { Outcome } from "../../../shared/failure.ts";
import type { Alignment, Closure } from "../../../shared/plan.ts";
import { apply } from "../store.ts";
import { withAlternativeChanged } from "./alternatives.ts";

/** Sets the ways of a line that are left open, in order along it. */
export function setClosures(
  { id, name }: Alignment,
  list: readonly Closure[],
  gesture?: string,
): Outcome<void> {
  const closures = [...list].sort((a, b) => a.fromM - b.fromM);
  return apply({
    note: `Change the closures of ${name}`,
    gesture,
    change: (plan) =>
      withAlternativeChanged(plan, id, ({ closures: _, ...bare }) =>
        closures.length > 0 ? { ...bare, closures } : bare,
      ),
  });
}
