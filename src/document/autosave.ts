import { effect, signal } from "@preact/signals";
import { type Failure, type Outcome, Refusal } from "../../shared/failure.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import {
  autosaveFailure,
  noSlot,
  takenOver,
  terrainFailure,
  terrainLost,
  unreadable,
  viewOnly,
} from "./autosave-failures.ts";
import { whilePressed } from "./pressed.ts";
import {
  channelOf,
  releaseSlot,
  stillHolds,
  takeEmptySlot,
  takeFree,
  takeOverSlot,
  takeSlot,
  whenFree,
} from "./slots.ts";
import { closeGate, type History, history, hold, plan, release, startFrom } from "./store.ts";
import { latestOf, readJournal, STEPS_STORED, writeJournal } from "./stored-plan.ts";
import {
  clearSlot,
  readStoredPlan,
  readStoredTerrain,
  storedSlots,
  writeStoredPlan,
  writeStoredTerrain,
} from "./vault.ts";
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

interface Place {
  /** Null when every slot is held by another page. */
  readonly slot: string | null;
}

/** Longest wait before what a pointer is still dragging is written, ms. */
const DRAG_DELAY_MS = 250;
/** Pause before a failed write is tried again, ms. */
const RETRY_MS = 5000;
/** Longest time that the next edit waits for a slow disk, and a page that is to take over for the last write, ms. */
const MAX_HOLD_MS = 2000;
const LOOK_MS = 20;
/** How long a page that is loaded again may take to have its plan back, ms. */
const RELOAD_MS = 3000;

let taken: Promise<Place> | null = null;
let slotNow: string | null = null;
let lastRevision = 0;
let terrainWrites: Promise<void> = Promise.resolve();
/** How often this page had to move its plan to another slot. */
const moves = signal(0);
let isTaking = false;
let channel: BroadcastChannel | null = null;
let finishWriting: () => Promise<void> = () => Promise.resolve();
let tellFailure: (failure: Failure) => void = () => {};
const fromVault = new WeakSet<File>();

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
    throw refusal(unreadable(latest.failure));
  }
  const terrain = await readStoredTerrain(slot);
  for (const file of terrain ?? []) fromVault.add(file);
  return { ...latest.value, terrain: terrain ?? [], failure: terrain ? null : terrainLost() };
}

/** The latest state saved in a slot; null when there is none. */
async function readLatest(slot: string): Promise<Outcome<History> | null> {
  const saved = (await readStoredPlan(slot)) ?? null;
  const journal = readJournal(localStorage.getItem(journalKey(slot)));
  lastRevision = Math.max(saved?.revision ?? 0, journal?.revision ?? 0);
  return latestOf(saved, journal);
}

/**
 * Edits the plan on this page from now on: the page that does so is asked to finish its writing and to let go. One
 * that does not answer loses the place, and goes on with a copy.
 */
export async function takeOver(): Promise<void> {
  const { slot } = await place();
  if (slot === null || !viewing.peek()) return;
  await takeWith(slot, async () => {
    channel?.postMessage("hand over");
    await takeOverSlot(slot);
    return true;
  });
}

/** Takes a slot in the way given, one way at a time, and edits the latest that is saved there. */
async function takeWith(slot: string, take: () => Promise<boolean>): Promise<void> {
  if (isTaking) return;
  isTaking = true;
  try {
    if (!(await take())) return look(slot);
    const latest = await readLatest(slot);
    if (latest?.ok) startFrom(latest.value);
    edit();
    channel?.postMessage("taken");
  } finally {
    isTaking = false;
  }
}

/** Goes on with a copy of the plan that is looked at, saved in a place of its own. */
export async function takeCopy(): Promise<void> {
  const { slot } = await place();
  const terrain = slot === null ? null : await readStoredTerrain(slot);
  await moveToEmptySlot();
  edit();
  if (terrain) await copyTerrain(terrain);
}

/** Opens the latest saved plan that no page has open, in place of the one that is looked at. @returns whether there is one */
export async function openOtherStored(): Promise<boolean> {
  const { slot } = await place();
  const others = (await storedSlots()).filter((name) => name !== slot);
  const isFound = (await takeFree(others)) !== null;
  if (isFound) location.reload();
  return isFound;
}

async function moveToEmptySlot(): Promise<void> {
  taken = storedSlots().then(async (all) => ({ slot: await takeEmptySlot(all) }));
  const { slot } = await place();
  listen(slot);
}

function edit(): void {
  closeGate(null);
  viewing.value = false;
}

/**
 * Lets the plan only be looked at while another page edits it, and follows what that page saves. Once that page is
 * closed this one edits the plan; of several, one. A page that is only loaded again has the plan back before that.
 */
function look(slot: string): void {
  closeGate(viewOnly());
  viewing.value = true;
  void whenFree(slot).then(async () => {
    await new Promise((done) => setTimeout(done, RELOAD_MS));
    const isWaiting = viewing.peek() && slotNow === slot;
    if (isWaiting) await takeWith(slot, async () => (await takeFree([slot])) !== null);
  });
}

/** Hears what other pages say of a slot. */
function listen(slot: string | null): void {
  channel?.close();
  channel = slot === null ? null : channelOf(slot);
  if (slot === null || !channel) return;
  channel.onmessage = ({ data }) => {
    const isLooking = viewing.peek();
    if (data === "who" && !isLooking) channel?.postMessage("taken");
    if (data === "hand over" && !isLooking) void handOver(slot);
    if (data === "saved" && isLooking) void showLatest(slot);
  };
}

async function handOver(slot: string): Promise<void> {
  if (!(await stillHolds(slot))) return;
  closeGate(viewOnly());
  release();
  await finishWriting();
  viewing.value = true;
  releaseSlot();
  look(slot);
}

async function showLatest(slot: string): Promise<void> {
  const latest = await readLatest(slot);
  if (!latest?.ok || !viewing.peek()) return;
  const { chosenId } = plan.peek();
  const isThere = latest.value.plan.alignments.some(({ id }) => id === chosenId);
  startFrom(isThere ? { ...latest.value, plan: { ...latest.value.plan, chosenId } } : latest.value);
}

/** Another page has taken the slot by force: what is here goes on elsewhere. */
function goOnWithCopy(): void {
  tellFailure(takenOver());
  void moveToEmptySlot().then(() => {
    moves.value += 1;
  });
}

/** What whoever saves the plan is told. */
export interface AutosaveReports {
  /** The plan, or an older state of it, is not saved; told once until it is saved again. The work goes on. */
  readonly onFailure: (failure: Failure) => void;
  /** The plan is saved again after a failure. */
  readonly onStoredAgain: () => void;
  /** Whether the plan on screen is on disk; told at every change. */
  readonly onStored?: (isStored: boolean) => void;
}

/**
 * Saves the plan and its last steps from now on. Each edit is written at once, and the next one waits until the disk
 * has it; what a pointer drags is written when it is let go. A failed write holds nothing up and is tried again.
 * @returns stops saving
 */
export function autosave({ onFailure, onStoredAgain, onStored }: AutosaveReports): () => void {
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
      channel?.postMessage("saved");
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
  tellFailure = onFailure;
  finishWriting = async () => {
    finish();
    const until = Date.now() + MAX_HOLD_MS;
    while (writer.waiting() !== null && Date.now() < until) {
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
    }
    const waiting = writer.waiting();
    if (waiting) writeInHaste(waiting);
  };
  const stop = effect(() => {
    const state = history.value;
    if (viewing.value || moves.value < 0) return;
    lastRevision += 1;
    onStored?.(false);
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
    ({ slot }) => {
      if (slot === null) onFailure(noSlot());
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
  if (files.length > 0 && files.every((file) => fromVault.has(file))) return Promise.resolve();
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

async function place(): Promise<Place> {
  taken ??= takePlace();
  try {
    const found = await taken;
    slotNow = found.slot;
    return found;
  } catch (thrown) {
    taken = null;
    throw refusal(autosaveFailure(thrown));
  }
}

async function takePlace(): Promise<Place> {
  const { name, isElsewhere } = await takeSlot(await storedSlots(), goOnWithCopy);
  slotNow = name;
  listen(name);
  if (isElsewhere && name !== null) look(name);
  return { slot: name };
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
  if (slotNow === null) return;
  try {
    const journal = writeJournal({
      ...{ revision: number, steps: state.done.length },
      text: writePlanFile(state.plan),
    });
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
    await writeStoredTerrain(slot, files);
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
