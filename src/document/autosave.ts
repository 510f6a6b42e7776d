import { effect } from "@preact/signals";
import { type Failure, failureOf, refusal } from "../../shared/failure.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import { autosaveFailure } from "./autosave-failures.ts";
import {
  announce,
  areStored,
  copyTerrain,
  journalKey,
  knownSlot,
  moves,
  moveToEmptySlot,
  nextRevision,
  place,
  readLatest,
  setSaver,
  storedTerrain,
} from "./plan-place.ts";
import { whilePressed } from "./pressed.ts";
import { type History, history, hold, release } from "./store.ts";
import { readJournal, STEPS_STORED, writeJournal } from "./stored-plan.ts";
import { clearSlot, writeStoredPlan } from "./vault.ts";
import { viewing } from "./viewing.ts";
import { writeBehind } from "./write-behind.ts";

/** What a page that was closed left behind. */
export interface StoredState extends History {
  /** The terrain files that were open; empty when there were none or they are lost. */
  readonly terrain: File[];
  /** What could not be restored; null when all was. */
  readonly failure: Failure | null;
}

interface Revision {
  readonly number: number;
  readonly state: History;
}

/** Longest wait before what a pointer is still dragging is written, ms. */
const DRAG_DELAY_MS = 250;
/** Pause before a failed write is tried again, ms. */
const RETRY_MS = 5000;
/** Longest time that the next edit waits for a slow disk, and a page that is to take over for the last write, ms. */
const MAX_HOLD_MS = 2000;
const LOOK_MS = 20;
let terrainWrites: Promise<void> = Promise.resolve();

/**
 * What was saved by the page that closed last (this tab's own after a reload); null when there is nothing. Call it
 * before {@link autosave}, and hand the result to `startFrom`.
 * @throws Refusal `autosave/unreadable` when there is a plan that cannot be opened: it is left alone and this page saves
 * its own elsewhere; `autosave/refused` when the browser saves nothing
 */
export async function restore(): Promise<StoredState | null> {
  const { slot } = await place();
  if (slot === null) return null;
  const latest = await readLatest(slot);
  if (latest === null) return null;
  if (!latest.ok) {
    await moveToEmptySlot();
    throw refusal("autosave/unreadable", { why: latest.failure });
  }
  const terrain = await storedTerrain(slot);
  return {
    ...latest.value,
    terrain: terrain ?? [],
    failure: terrain ? null : failureOf("autosave/terrain-lost"),
  };
}

/** What whoever saves the plan is told. */
export interface AutosaveReports {
  /** The plan, or an older state of it, is not saved; told once until it is saved again. The work goes on. */
  readonly onFailure: (failure: Failure) => void;
  /** The plan is saved again after a failure. */
  readonly onStoredAgain: () => void;
  /** Whether the plan on screen is on disk; told at every change. */
  readonly onStored?: (isStored: boolean) => void;
  /** Another page edits the plan, and has opened this elevation data. */
  readonly onTerrain?: (files: File[]) => void;
}

/**
 * Saves the plan and its last steps from now on. Each edit is written at once, and the next one waits until the disk
 * has it; what a pointer drags is written when it is let go. A failed write holds nothing up and is tried again.
 * @returns stops saving
 */
export function autosave({
  onFailure,
  onStoredAgain,
  onStored,
  onTerrain = () => {},
}: AutosaveReports): () => void {
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
      if (isFailing) onStoredAgain();
      isFailing = false;
      onStored?.(true);
      announce("saved");
      open();
    },
    onFailure(thrown, value) {
      writeInHaste(value);
      if (!isFailing) onFailure(autosaveFailure(thrown));
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
  const finishWriting = async () => {
    finish();
    const until = Date.now() + MAX_HOLD_MS;
    while (writer.waiting() !== null && Date.now() < until) {
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
    }
    const waiting = writer.waiting();
    if (waiting) writeInHaste(waiting);
  };
  setSaver({ finish: finishWriting, onFailure, onTerrain });
  const stop = effect(() => {
    const state = history.value;
    if (viewing.value || moves.value < 0) return;
    const number = nextRevision();
    onStored?.(false);
    const isDragged = pressed.isDown();
    if (!isDragged && !isFailing) close();
    writer.put({ number, state }, isDragged ? DRAG_DELAY_MS : 0);
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
    ({ slot }) => {
      if (slot === null) onFailure(failureOf("autosave/too-many-pages"));
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
 * Saves the terrain files beside the plan, in place of those saved before; their bytes are copied.
 * @throws Refusal `autosave/full`, `autosave/refused`; the files saved before stay then
 */
export function storeTerrain(files: readonly File[]): Promise<void> {
  if (viewing.peek()) return Promise.resolve();
  if (areStored(files)) return Promise.resolve();
  const next = terrainWrites.then(() => copyTerrain(files));
  terrainWrites = next.catch(() => {});
  return next;
}

/**
 * Forgets the plan and terrain saved for this page; the next change of the plan is saved again.
 * @public
 */
export async function forget(): Promise<void> {
  const { slot } = await place();
  if (slot === null) return;
  localStorage.removeItem(journalKey(slot));
  await clearSlot(slot);
}

async function write({ number, state }: Revision): Promise<void> {
  const { slot } = await place();
  if (slot === null) return;
  await writeStoredPlan(slot, {
    revision: number,
    keptAt: Date.now(),
    text: writePlanFile(state.plan),
    history: {
      plan: state.plan,
      done: state.done.slice(-STEPS_STORED),
      undone: state.undone.slice(-STEPS_STORED),
    },
  });
  const journal = readJournal(localStorage.getItem(journalKey(slot)));
  if (journal && journal.revision <= number) localStorage.removeItem(journalKey(slot));
}

function writeInHaste({ number, state }: Revision): void {
  const slot = knownSlot();
  if (slot === null) return;
  try {
    const journal = writeJournal({
      ...{ revision: number, steps: state.done.length },
      text: writePlanFile(state.plan),
    });
    localStorage.setItem(journalKey(slot), journal);
  } catch {
    // The database write that is tried again may still succeed, and its failure has been told.
  }
}
