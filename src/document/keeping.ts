import { effect } from "@preact/signals";
import { type Failure, Refusal } from "../../shared/failure.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import {
  keepingFailure,
  noSlot,
  secondPage,
  terrainFailure,
  terrainLost,
  unreadable,
} from "./keeping-failures.ts";
import { latestOf, readJournal, writeJournal } from "./kept-plan.ts";
import { whilePressed } from "./pressed.ts";
import { takeEmptySlot, takeSlot } from "./slots.ts";
import { type History, history, hold, release } from "./store.ts";
import {
  clearSlot,
  keptSlots,
  readKeptPlan,
  readKeptTerrain,
  writeKeptPlan,
  writeKeptTerrain,
} from "./vault.ts";
import { writeBehind } from "./write-behind.ts";

/** What a page that was closed left behind. */
export interface Kept extends History {
  /** The terrain files that were open; empty when there were none or they are lost. */
  readonly terrain: File[];
  /** What could not be restored; null when all was. */
  readonly failure: Failure | null;
}

interface Revision {
  readonly number: number;
  readonly state: History;
}

interface Place {
  /** Null when every slot is held by another page. */
  readonly slot: string | null;
  /** True when another open page holds a kept plan. */
  readonly beside: boolean;
}

/** Longest wait before what a pointer is still dragging is written, ms. */
const DRAG_DELAY_MS = 250;
/** Pause before a failed write is tried again, ms. */
const RETRY_MS = 5000;
/** Longest time that the next edit waits for a slow disk, ms. */
const MAX_HOLD_MS = 2000;
const STEPS_KEPT = 50;

let taken: Promise<Place> | null = null;
let slotNow: string | null = null;
let lastRevision = 0;
let terrainWrites: Promise<void> = Promise.resolve();
const fromVault = new WeakSet<File>();

/**
 * What was kept by the page that closed last (this tab's own after a reload); null when there is nothing. Call it
 * before {@link keepPlan}, and hand the result to `startFrom`.
 * @throws Refusal `keep/unreadable` when there is a plan that cannot be opened: it is left alone and this page keeps
 * its own elsewhere; `keep/refused` when the browser keeps nothing
 */
export async function restore(): Promise<Kept | null> {
  const { slot } = await place();
  if (slot === null) return null;
  const kept = (await readKeptPlan(slot)) ?? null;
  const journal = readJournal(localStorage.getItem(journalKey(slot)));
  const latest = latestOf(kept, journal);
  if (latest === null) return null;
  if (!latest.ok) {
    taken = keptSlots().then(async (all) => ({ slot: await takeEmptySlot(all), beside: false }));
    throw refusal(unreadable(latest.failure));
  }
  lastRevision = Math.max(kept?.revision ?? 0, journal?.revision ?? 0);
  const terrain = await readKeptTerrain(slot);
  for (const file of terrain ?? []) fromVault.add(file);
  return { ...latest.value, terrain: terrain ?? [], failure: terrain ? null : terrainLost() };
}

/** What whoever keeps the plan is told. */
export interface KeepingReports {
  /** The plan, or an older state of it, is not kept; told once until it is kept again. The work goes on. */
  readonly onFailure: (failure: Failure) => void;
  /** The plan is kept again after a failure. */
  readonly onKeptAgain: () => void;
  /** Whether the plan on screen is on disk; told at every change. */
  readonly onKept?: (isKept: boolean) => void;
}

/**
 * Keeps the plan and its last steps from now on. Each edit is written at once, and the next one waits until the disk
 * has it; what a pointer drags is written when it is let go. A failed write holds nothing up and is tried again.
 * @returns stops keeping
 */
export function keepPlan({ onFailure, onKeptAgain, onKept }: KeepingReports): () => void {
  let isFailing = false;
  let opening: ReturnType<typeof setTimeout> | undefined;
  const open = () => {
    clearTimeout(opening);
    release();
  };
  const close = () => {
    clearTimeout(opening);
    opening = setTimeout(release, MAX_HOLD_MS);
    hold();
  };
  const writer = writeBehind<Revision>({
    write,
    retryMs: RETRY_MS,
    onWritten() {
      if (isFailing) onKeptAgain();
      isFailing = false;
      onKept?.(true);
      open();
    },
    onFailure(thrown, value) {
      writeInHaste(value);
      if (!isFailing) onFailure(keepingFailure(thrown));
      isFailing = true;
      open();
    },
  });
  const pressed = whilePressed(() => finish());
  const finish = () => {
    if (writer.waiting() === null) return;
    if (!isFailing) close();
    writer.hurry();
  };
  const stop = effect(() => {
    const state = history.value;
    lastRevision += 1;
    onKept?.(false);
    const isDragged = pressed.isDown();
    if (!isDragged && !isFailing) close();
    writer.put({ number: lastRevision, state }, isDragged ? DRAG_DELAY_MS : 0);
  });
  const leave = () => {
    open();
    const waiting = writer.waiting();
    if (waiting) writeInHaste(waiting);
    writer.hurry();
  };
  const whenHidden = () => document.visibilityState === "hidden" && leave();
  const warn = (event: BeforeUnloadEvent) => isFailing && event.preventDefault();
  document.addEventListener("visibilitychange", whenHidden);
  window.addEventListener("pagehide", leave);
  window.addEventListener("beforeunload", warn);
  place().then(
    ({ slot, beside }) => {
      if (slot === null) onFailure(noSlot());
      else if (beside) onFailure(secondPage());
    },
    () => {},
  );
  return () => {
    stop();
    pressed.stop();
    open();
    document.removeEventListener("visibilitychange", whenHidden);
    window.removeEventListener("pagehide", leave);
    window.removeEventListener("beforeunload", warn);
  };
}

/**
 * Keeps the terrain files beside the plan, in place of those kept before; their bytes are copied.
 * @throws Refusal `keep/full`, `keep/refused`; the files kept before stay then
 */
export function keepTerrain(files: readonly File[]): Promise<void> {
  if (files.length > 0 && files.every((file) => fromVault.has(file))) return Promise.resolve();
  const next = terrainWrites.then(() => copyTerrain(files));
  terrainWrites = next.catch(() => {});
  return next;
}

/**
 * Forgets the plan and terrain kept for this page; the next change of the plan is kept again.
 * @public
 */
export async function forget(): Promise<void> {
  const { slot } = await place();
  if (slot === null) return;
  localStorage.removeItem(journalKey(slot));
  await clearSlot(slot);
}

async function place(): Promise<Place> {
  taken ??= takePlace();
  try {
    const found = await taken;
    slotNow = found.slot;
    return found;
  } catch (thrown) {
    taken = null;
    throw refusal(keepingFailure(thrown));
  }
}

async function takePlace(): Promise<Place> {
  const kept = await keptSlots();
  const slot = await takeSlot(kept);
  const beside = kept.length > 0 && slot !== null && !kept.includes(slot);
  return { slot, beside };
}

async function write({ number, state }: Revision): Promise<void> {
  const { slot } = await place();
  if (slot === null) return;
  await writeKeptPlan(slot, {
    revision: number,
    keptAt: Date.now(),
    text: writePlanFile(state.plan),
    history: {
      plan: state.plan,
      done: state.done.slice(-STEPS_KEPT),
      undone: state.undone.slice(-STEPS_KEPT),
    },
  });
  const journal = readJournal(localStorage.getItem(journalKey(slot)));
  if (journal && journal.revision <= number) localStorage.removeItem(journalKey(slot));
}

function writeInHaste({ number, state }: Revision): void {
  if (slotNow === null) return;
  try {
    const journal = writeJournal({ revision: number, text: writePlanFile(state.plan) });
    localStorage.setItem(journalKey(slotNow), journal);
  } catch {
    // The database write that is tried again may still succeed, and its failure has been told.
  }
}

async function copyTerrain(files: readonly File[]): Promise<void> {
  const { slot } = await place();
  if (slot === null) return;
  const bytes = files.reduce((sum, file) => sum + file.size, 0);
  try {
    const { quota = Infinity, usage = 0 } = (await navigator.storage?.estimate?.()) ?? {};
    if (bytes > quota - usage) throw new DOMException("No room left", "QuotaExceededError");
    await writeKeptTerrain(slot, files);
  } catch (thrown) {
    throw refusal(terrainFailure(thrown));
  }
}

function refusal({ code, message, remedy }: Failure): Refusal {
  return new Refusal(code, message, remedy);
}

function journalKey(slot: string): string {
  return `drystead.journal.${slot}`;
}
