import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Failure, Outcome } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import { validateChange, validatePlan } from "../../shared/plan-check.ts";
import { frozen } from "./freeze.ts";
import type { ApplyEdit, Edit } from "./types.ts";

/** One step of undo: the plan on either side of it. Plans share what did not change. */
export interface Step {
  readonly note: string;
  /** What is said once it is done; the note when left out. */
  readonly said?: string | undefined;
  readonly before: Plan;
  readonly after: Plan;
}

/** The present plan and the steps on either side of it, newest last. */
export interface History {
  readonly plan: Plan;
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

/** Most steps that can be undone. */
export const MAX_STEPS = 200;

/** The newest history: what is on screen, and an edit that still waits for the one before it to be written. */
let newest: History = { plan: frozen(EMPTY_PLAN), done: [], undone: [] };
const present = signal<History>(newest);
const made = signal<Step | null>(null);
let openGesture: string | null = null;
let isHeld = false;
let closedBecause: Failure | null = null;

/** Plan, done and undone steps as one value, for saving. */
export const history: ReadonlySignal<History> = present;
/** The plan as it stands: immutable, always valid. */
export const plan: ReadonlySignal<Plan> = computed(() => present.value.plan);
/** The step that an edit made last since the plan was started from or a step was taken back; else null. */
export const lastMade: ReadonlySignal<Step | null> = made;
/** Note of the step that {@link undo} would take back; null when there is none. */
export const undoNote: ReadonlySignal<string | null> = computed(
  () => present.value.done.at(-1)?.note ?? null,
);
/** Note of the step that {@link redo} would do again; null when there is none. */
export const redoNote: ReadonlySignal<string | null> = computed(
  () => present.value.undone.at(-1)?.note ?? null,
);

/**
 * Makes the next step wait: it is checked at once, but becomes the plan only at {@link release}; a drag goes on. For
 * whoever writes the plan to disk, so that a step is there before the next one is made.
 */
export function hold(): void {
  isHeld = true;
}

/** Lets a waiting step become the plan, and later ones at once. */
export function release(): void {
  isHeld = false;
  present.value = newest;
}

/** Refuses every edit from now on, with that failure; null lets them through again. A choice of line goes on. */
export function closeGate(because: Failure | null): void {
  closedBecause = because;
}

/**
 * The one gate of the document. An edit whose plan is not valid changes nothing and returns the failure;
 * an edit that changes no part of the plan it was given makes no step. Edits in a row with the same gesture are one
 * step. A change of the chosen alternative alone is a change of view: no step, and redo stays.
 */
export const apply: ApplyEdit = (edit) => {
  const before = newest.plan;
  const after = edit.change(before);
  const checked = validateChange(before, after);
  if (!checked.ok) return checked;
  const changed = changedKeys(before, after);
  if (changed.size === 0) return { ok: true, value: undefined };
  if (changed.size === 1 && changed.has("chosenId")) show({ ...newest, plan: after });
  else if (closedBecause) return { ok: false, failure: closedBecause };
  else record(edit, before, after);
  return { ok: true, value: undefined };
};

/**
 * Follows a step up within that same step, so that undo takes both back: what follows from it was worked out
 * meanwhile. Nothing happens, and the answer is false, when the last step no longer starts at `before`.
 */
export function followUp(before: Plan, change: (plan: Plan) => Plan): Outcome<boolean> {
  const { plan: now, done } = newest;
  const last = done.at(-1);
  if (last?.before !== before || closedBecause) return { ok: true, value: false };
  const after = change(now);
  const checked = validateChange(now, after);
  if (!checked.ok) return checked;
  show({ plan: after, done: [...done.slice(0, -1), { ...last, after }], undone: [] });
  return { ok: true, value: true };
}

/** Ends a drag or slide: the next edit is a step of its own even when it carries the same gesture. */
export function endGesture(): void {
  openGesture = null;
}

/** Takes the last step back; does nothing when there is none. */
export function undo(): void {
  if (closedBecause) return;
  openGesture = null;
  const { plan: now, done, undone } = newest;
  const step = done.at(-1);
  if (!step) return;
  made.value = null;
  show({
    plan: withViewOf(step, step.before, now),
    done: done.slice(0, -1),
    undone: [...undone, step],
  });
}

/** Does the step again that was last taken back; does nothing when there is none. */
export function redo(): void {
  if (closedBecause) return;
  openGesture = null;
  const { plan: now, done, undone } = newest;
  const step = undone.at(-1);
  if (!step) return;
  show({
    plan: withViewOf(step, step.after, now),
    done: [...done, step],
    undone: undone.slice(0, -1),
  });
}

/** Puts another plan in place of the present one (a file opened) as one step that can be undone. */
export function replacePlan(next: Plan, note: string): Outcome<void> {
  if (closedBecause) return { ok: false, failure: closedBecause };
  openGesture = null;
  const checked = validatePlan(next);
  if (!checked.ok) return checked;
  record({ note, change: () => next }, newest.plan, next);
  return { ok: true, value: undefined };
}

/** Starts from a saved or new plan, with its steps; what was there before cannot be undone to. */
export function startFrom(saved: {
  plan: Plan;
  done?: readonly Step[];
  undone?: readonly Step[];
}): Outcome<void> {
  openGesture = null;
  const checked = validatePlan(saved.plan);
  if (!checked.ok) return checked;
  made.value = null;
  show({ plan: saved.plan, done: saved.done ?? [], undone: saved.undone ?? [] });
  return { ok: true, value: undefined };
}

function record(edit: Edit, before: Plan, after: Plan): void {
  const { done } = newest;
  const last = done.at(-1);
  const continues =
    edit.gesture !== undefined && edit.gesture === openGesture && last !== undefined;
  const { note, said } = edit;
  const step = { note, said, before: continues ? last.before : before, after };
  const earlier = continues ? done.slice(0, -1) : done.slice(-(MAX_STEPS - 1));
  openGesture = edit.gesture ?? null;
  const goesOn = continues && newest === present.peek();
  made.value = step;
  show({ plan: after, done: [...earlier, step], undone: [] }, goesOn);
}

function show(next: History, goesOn = false): void {
  frozen(next.plan);
  newest = next;
  if (goesOn || !isHeld) present.value = next;
}

function changedKeys(before: Plan, after: Plan): Set<keyof Plan> {
  const keys = [...Object.keys(before), ...Object.keys(after)] as (keyof Plan)[];
  return new Set(keys.filter((key) => before[key] !== after[key]));
}

function withViewOf(step: Step, target: Plan, now: Plan): Plan {
  if (step.before.chosenId !== step.after.chosenId || target.chosenId === now.chosenId)
    return target;
  const there = target.alignments.some((alignment) => alignment.id === now.chosenId);
  return there || now.chosenId === null ? { ...target, chosenId: now.chosenId } : target;
}
