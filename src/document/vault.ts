import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { History } from "./store.ts";

/** A plan as saved in the browser. */
export interface StoredPlan {
  /** Counts the changes of the plan; the higher of two is the later. */
  readonly revision: number;
  /** Milliseconds since 1970. */
  readonly keptAt: number;
  /** The plan as a plan file, which later versions of the program can upgrade. */
  readonly text: string;
  readonly history: History;
}

/** Terrain files as saved: in a folder of the origin's file system, or in the database itself. */
interface StoredTerrain {
  readonly folder: string | null;
  readonly files: readonly {
    name: string;
    bytes: number;
    lastModified: number;
    blob: Blob | null;
  }[];
}

interface Shape extends DBSchema {
  plans: { key: string; value: StoredPlan };
  terrain: { key: string; value: StoredTerrain };
}

const ROOT = "terrain";
let opened: Promise<IDBPDatabase<Shape>> | null = null;

function database(): Promise<IDBPDatabase<Shape>> {
  opened ??= openDB<Shape>("drystead", 1, {
    upgrade(db) {
      db.createObjectStore("plans");
      db.createObjectStore("terrain");
    },
    terminated() {
      opened = null;
    },
  });
  opened.catch(() => {
    opened = null;
  });
  return opened;
}

/** Slots that hold a plan, the latest saved first. */
export async function storedSlots(): Promise<string[]> {
  const transaction = (await database()).transaction("plans");
  const found: { slot: string; keptAt: number }[] = [];
  for await (const cursor of transaction.store) {
    found.push({ slot: cursor.key, keptAt: cursor.value.keptAt });
  }
  return found.sort((a, b) => b.keptAt - a.keptAt).map(({ slot }) => slot);
}

export async function readStoredPlan(slot: string): Promise<StoredPlan | undefined> {
  return (await database()).get("plans", slot);
}

/**
 * Writes the plan in one transaction: after a crash the slot holds this one or the one before, whole. Resolves when
 * the disk has it, not only the system's memory.
 */
export async function writeStoredPlan(slot: string, saved: StoredPlan): Promise<void> {
  const transaction = (await database()).transaction("plans", "readwrite", {
    durability: "strict",
  });
  const written = transaction.store.put(saved, slot);
  transaction.commit();
  await Promise.all([written, transaction.done]);
}

/**
 * Copies the files' bytes, then puts them in the place of those saved before: after a crash the slot holds the old
 * ones or the new ones, whole.
 */
export async function writeStoredTerrain(slot: string, files: readonly File[]): Promise<void> {
  const root = await slotFolder(slot);
  const folder = root ? `${Date.now()}` : null;
  try {
    for (const [index, file] of files.entries()) {
      if (root && folder) await copyInto(root, folder, `${index}`, file);
    }
    const saved = files.map((file) => ({
      name: file.name,
      bytes: file.size,
      lastModified: file.lastModified,
      blob: root ? null : file,
    }));
    await (await database()).put("terrain", { folder, files: saved }, slot);
  } catch (thrown) {
    if (root && folder) await root.removeEntry(folder, { recursive: true }).catch(() => {});
    throw thrown;
  }
  if (root) await removeOthers(root, folder);
}

/** The saved terrain files; null when one of them is missing or not whole. */
export async function readStoredTerrain(slot: string): Promise<File[] | null> {
  const saved = await (await database()).get("terrain", slot);
  if (!saved) return [];
  const root = saved.folder === null ? null : await slotFolder(slot);
  const folder = await root?.getDirectoryHandle(saved.folder ?? "").catch(() => null);
  const files: File[] = [];
  for (const [index, { name, bytes, lastModified, blob }] of saved.files.entries()) {
    const handle = await folder?.getFileHandle(`${index}`).catch(() => null);
    const found = blob ?? (await handle?.getFile());
    if (found?.size !== bytes) return null;
    files.push(new File([found], name, { lastModified }));
  }
  return files;
}

/** Removes all that a slot holds. */
export async function clearSlot(slot: string): Promise<void> {
  const db = await database();
  await Promise.all([db.delete("plans", slot), db.delete("terrain", slot)]);
  const root = await slotFolder(slot);
  if (root) await removeOthers(root, null);
}

async function slotFolder(slot: string): Promise<FileSystemDirectoryHandle | null> {
  if (!("createWritable" in (globalThis.FileSystemFileHandle?.prototype ?? {}))) return null;
  try {
    const origin = await navigator.storage.getDirectory();
    const root = await origin.getDirectoryHandle(ROOT, { create: true });
    return await root.getDirectoryHandle(slot, { create: true });
  } catch {
    return null;
  }
}

async function copyInto(
  root: FileSystemDirectoryHandle,
  folder: string,
  name: string,
  file: File,
): Promise<void> {
  const directory = await root.getDirectoryHandle(folder, { create: true });
  const handle = await directory.getFileHandle(name, { create: true });
  await file.stream().pipeTo(await handle.createWritable());
}

async function removeOthers(
  root: FileSystemDirectoryHandle,
  current: string | null,
): Promise<void> {
  const names: string[] = [];
  for await (const name of root.keys()) if (name !== current) names.push(name);
  for (const name of names) await root.removeEntry(name, { recursive: true }).catch(() => {});
}
