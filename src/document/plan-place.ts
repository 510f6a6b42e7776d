import { signal } from "@preact/signals";
import { type Failure, failureOf, type Outcome, Refusal } from "../../shared/failure.ts";
import { autosaveFailure, terrainFailure } from "./autosave-failures.ts";
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
import { closeGate, type History, plan, release, startFrom } from "./store.ts";
import { latestOf, readJournal } from "./stored-plan.ts";
import { readStoredPlan, readStoredTerrain, storedSlots, writeStoredTerrain } from "./vault.ts";
import { viewing } from "./viewing.ts";

/*
 * Where this page's plan is stored, and which of several pages edits it: the others look on.
 */

interface Place {
  /** Null when every slot is held by another page. */
  readonly slot: string | null;
}

/** What pages that share a plan say to each other. */
type Said = "who" | "taken" | "hand over" | "saved" | "terrain";

/** What a page that edits does for the others, set by whoever saves. */
export interface Saver {
  /** Writes what is not written yet, before another page takes over. */
  readonly finish: () => Promise<void>;
  readonly onFailure: (failure: Failure) => void;
  /** The page that edits the plan has opened this elevation data. */
  readonly onTerrain: (files: File[]) => void;
}

/** How long a page that is loaded again may take to have its plan back, ms. */
const RELOAD_MS = 3000;

let taken: Promise<Place> | null = null;
let slotNow: string | null = null;
let lastRevision = 0;
let isTaking = false;
let channel: BroadcastChannel | null = null;
let saver: Saver | null = null;
const fromVault = new WeakSet<File>();

/** How often this page had to move its plan to another slot. */
export const moves = signal(0);

export function setSaver(next: Saver): void {
  saver = next;
}

/** The slot of this page once it has one; null before, and where every one is held. */
export function knownSlot(): string | null {
  return slotNow;
}

export function nextRevision(): number {
  lastRevision += 1;
  return lastRevision;
}

/** Says to the pages that look on what is on disk now. */
export function announce(what: Extract<Said, "saved" | "terrain">): void {
  say(what);
}

function say(what: Said): void {
  channel?.postMessage(what);
}

/** Where the plan is written that the disk may not have in time. */
export function journalKey(slot: string): string {
  return `drystead.journal.${slot}`;
}

/** The latest state saved in a slot; null when there is none. */
export async function readLatest(slot: string): Promise<Outcome<History> | null> {
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
    say("hand over");
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
    say("taken");
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

export async function moveToEmptySlot(): Promise<void> {
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
  closeGate(failureOf("autosave/view-only"));
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
  channel.onmessage = ({ data }: MessageEvent<Said>) => {
    const isLooking = viewing.peek();
    if (data === "who" && !isLooking) say("taken");
    if (data === "hand over" && !isLooking) void handOver(slot);
    if (data === "saved" && isLooking) void showLatest(slot);
    if (data === "terrain" && isLooking) void showTerrain(slot);
  };
}

async function handOver(slot: string): Promise<void> {
  if (!(await stillHolds(slot))) return;
  closeGate(failureOf("autosave/view-only"));
  release();
  await saver?.finish();
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

async function showTerrain(slot: string): Promise<void> {
  const files = await storedTerrain(slot);
  if (files && files.length > 0 && viewing.peek()) saver?.onTerrain(files);
}

/** The terrain files stored in a slot; null when they are lost. */
export async function storedTerrain(slot: string): Promise<File[] | null> {
  const files = await readStoredTerrain(slot);
  for (const file of files ?? []) fromVault.add(file);
  return files;
}

/** Whether all these files came from the browser's own storage. */
export function areStored(files: readonly File[]): boolean {
  return files.length > 0 && files.every((file) => fromVault.has(file));
}

/** @throws Refusal `autosave/full`, `autosave/refused`; the files saved before stay then */
export async function copyTerrain(files: readonly File[]): Promise<void> {
  const { slot } = await place();
  if (slot === null) return;
  const bytes = files.reduce((sum, file) => sum + file.size, 0);
  try {
    const { quota = Infinity, usage = 0 } = (await navigator.storage?.estimate?.()) ?? {};
    if (bytes > quota - usage) throw new DOMException("No room left", "QuotaExceededError");
    await writeStoredTerrain(slot, files);
  } catch (thrown) {
    throw new Refusal(terrainFailure(thrown));
  }
  announce("terrain");
}

/** Another page has taken the slot by force: what is here goes on elsewhere. */
function goOnWithCopy(): void {
  saver?.onFailure(failureOf("autosave/taken-over"));
  void moveToEmptySlot().then(() => {
    moves.value += 1;
  });
}

/** The place of this page's plan, taken on the first call. @throws Refusal `autosave/refused` */
export async function place(): Promise<Place> {
  taken ??= takePlace();
  try {
    const found = await taken;
    slotNow = found.slot;
    return found;
  } catch (thrown) {
    taken = null;
    throw new Refusal(autosaveFailure(thrown));
  }
}

async function takePlace(): Promise<Place> {
  const { name, isElsewhere } = await takeSlot(await storedSlots(), goOnWithCopy);
  slotNow = name;
  listen(name);
  if (isElsewhere && name !== null) look(name);
  return { slot: name };
}
