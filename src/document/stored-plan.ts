import type { Outcome } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import type { History, Step } from "./store.ts";
import type { StoredPlan } from "./vault.ts";

/** A plan written in haste while the page was closing. */
export interface Journal {
  readonly revision: number;
  /** How many steps undo would take back from it. */
  readonly steps: number;
  /** The plan as a plan file. */
  readonly text: string;
}

/** Of more steps than this the earliest are not saved. */
export const STEPS_STORED = 50;

/** The text of a journal as the browser saved it, or null when there is none or it is damaged. */
export function readJournal(stored: string | null): Journal | null {
  if (stored === null) return null;
  const [, revision, steps, text] = /^(\d+)(?: (\d+))?\n(.*)$/s.exec(stored) ?? [];
  if (revision === undefined || text === undefined) return null;
  return { revision: Number(revision), steps: Number(steps ?? STEPS_STORED), text };
}

/** A journal as one text. */
export function writeJournal({ revision, steps, text }: Journal): string {
  return `${revision} ${steps}\n${text}`;
}

/**
 * The latest state from what was saved: the saved plan with its steps, and the journal's plan on top of it when that
 * is later: as the end of the last step where that was still being made, else as a step of its own. Steps that no longer fit are left out; the plan is read from its file when its value does not fit.
 */
export function latestOf(
  saved: StoredPlan | null,
  journal: Journal | null,
): Outcome<History> | null {
  const before = saved && historyOf(saved);
  const isLater = journal !== null && journal.revision > (saved?.revision ?? -1);
  const after = isLater ? readPlanFile(journal.text) : null;
  if (!after?.ok) return before ?? after;
  const { plan } = after.value;
  return {
    ok: true,
    value: before?.ok ? withStep(before.value, plan, journal!.steps) : only(plan),
  };
}

function historyOf({ history, text }: StoredPlan): Outcome<History> {
  if (validatePlan(history?.plan).ok) {
    const steps = [...(history.done ?? []), ...(history.undone ?? [])];
    return { ok: true, value: steps.every(isSound) ? history : only(history.plan) };
  }
  const read = readPlanFile(text);
  return read.ok ? { ok: true, value: only(read.value.plan) } : read;
}

function isSound(step: Step): boolean {
  return (
    typeof step?.note === "string" && validatePlan(step.before).ok && validatePlan(step.after).ok
  );
}

function withStep({ plan: before, done }: History, plan: Plan, steps: number): History {
  const last = done.at(-1);
  if (last && steps === done.length && steps < STEPS_STORED) {
    return { plan, done: [...done.slice(0, -1), { ...last, after: plan }], undone: [] };
  }
  const step = { note: "Last change before the page closed", before, after: plan };
  return { plan, done: [...done, step], undone: [] };
}

function only(plan: Plan): History {
  return { plan, done: [], undone: [] };
}
