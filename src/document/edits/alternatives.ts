import type { Alignment, LonLat, Plan } from "../../../shared/plan.ts";
import { chosenId } from "../chosen.ts";
import { tell } from "../notices.ts";
import { apply } from "../store.ts";
import type { Edit } from "../types.ts";

/** Sends an edit through the gate; what it refuses is said in a notice. */
export function edit(change: Edit): boolean {
  const outcome = apply(change);
  if (!outcome.ok) tell("error", outcome.failure);
  return outcome.ok;
}

/** A plan with a new alternative at the end, chosen. */
function withAlternative(plan: Plan, alternative: Alignment): Plan {
  return {
    ...plan,
    alignments: [...plan.alignments, alternative],
    chosenId: alternative.id,
  };
}

/** A plan with a copy of an alternative right after it, chosen. */
export function withCopy(plan: Plan, id: string, copyId: string): Plan {
  return {
    ...plan,
    alignments: plan.alignments.flatMap((each) =>
      each.id === id ? [each, { ...each, id: copyId, name: copyName(each.name) }] : [each],
    ),
    chosenId: copyId,
  };
}

function copyName(name: string): string {
  return `${name.slice(0, 100)}, copy`;
}

/** A plan without an alternative; its neighbour is chosen when it was the chosen one. */
export function withoutAlternative(plan: Plan, id: string): Plan {
  const at = plan.alignments.findIndex((each) => each.id === id);
  const alignments = plan.alignments.filter((each) => each.id !== id);
  const neighbour = alignments[Math.min(at, alignments.length - 1)]?.id ?? null;
  return { ...plan, alignments, chosenId: plan.chosenId === id ? neighbour : plan.chosenId };
}

/** A plan with an alternative moved one place; at the end of the list nothing moves. */
export function withAlternativeMoved(plan: Plan, id: string, by: -1 | 1): Plan {
  const from = plan.alignments.findIndex((each) => each.id === id);
  const to = from + by;
  if (from < 0 || to < 0 || to >= plan.alignments.length) return plan;
  const alignments = [...plan.alignments];
  const [moved] = alignments.splice(from, 1);
  alignments.splice(to, 0, moved!);
  return { ...plan, alignments };
}

/** A plan with one alternative changed. */
export function withAlternativeChanged(
  plan: Plan,
  id: string,
  change: (alternative: Alignment) => Alignment,
): Plan {
  return {
    ...plan,
    alignments: plan.alignments.map((each) => (each.id === id ? change(each) : each)),
  };
}

/** Adds a ring that was made with a setback, metres, which it keeps. */
export function addRing(name: string, corners: readonly LonLat[], setbackM: number): boolean {
  const ring: Alignment = {
    id: crypto.randomUUID(),
    name,
    kind: "ring",
    corners,
    reachBreaksM: [],
    setbackM,
  };
  return edit({ note: `Add ${name}`, change: (plan) => withAlternative(plan, ring) });
}

export function copyAlternative(alternative: Alignment): void {
  const copyId = crypto.randomUUID();
  edit({
    note: `Copy ${alternative.name}`,
    change: (plan) => withCopy(plan, alternative.id, copyId),
  });
}

export function renameAlternative(alternative: Alignment, name: string): void {
  if (name === "") return;
  edit({
    note: `Rename ${alternative.name}`,
    change: (plan) => withAlternativeChanged(plan, alternative.id, (each) => ({ ...each, name })),
  });
}

export function deleteAlternative(alternative: Alignment): void {
  edit({
    note: `Delete ${alternative.name}`,
    change: (plan) => withoutAlternative(plan, alternative.id),
  });
}

export function moveAlternative(alternative: Alignment, by: -1 | 1): void {
  edit({
    note: `Move ${alternative.name} ${by < 0 ? "forward" : "back"}`,
    change: (plan) => withAlternativeMoved(plan, alternative.id, by),
  });
}

/** Chooses the alternative so many places on, round the ends; a view of the plan, not a step of undo when alone. */
export function neighbourOf(plan: Plan, by: -1 | 1): string | null {
  const { alignments } = plan;
  if (alignments.length < 2) return null;
  const at = alignments.findIndex((each) => each.id === chosenId.value);
  return alignments[(at + by + alignments.length) % alignments.length]!.id;
}
