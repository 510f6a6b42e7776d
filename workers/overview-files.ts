import type { OverviewShelf } from "./raster/built-overview.ts";

const FOLDER = "overviews";
/** Overviews kept, the oldest dropped first; each takes 64 MB at most. */
const MOST_KEPT = 4;
/** Room that must be left to the plan and the elevation data after an overview is kept, bytes. */
const SPARE_BYTES = 1_000_000_000;

/**
 * Overviews in the browser's own files (Origin Private File System). A browser without them, or without room, keeps
 * none: they are then made again at the next visit.
 */
export const overviewFiles: OverviewShelf = {
  async get(key, cells) {
    try {
      const folder = await overviewFolder();
      const file = await (await folder.getFileHandle(await fileName(key))).getFile();
      return file.size === cells * 4 ? new Float32Array(await file.arrayBuffer()) : null;
    } catch {
      return null;
    }
  },

  async put(key, heightsM) {
    try {
      const { quota = 0, usage = 0 } = await navigator.storage.estimate();
      if (quota - usage - heightsM.byteLength < SPARE_BYTES) return;
      const folder = await overviewFolder();
      await dropOldest(folder);
      await write(folder, await fileName(key), heightsM);
    } catch {
      // Nothing depends on it.
    }
  },

  alone: (key, work) =>
    navigator.locks ? navigator.locks.request(`drystead.overview ${key}`, work) : work(),
};

async function overviewFolder(): Promise<FileSystemDirectoryHandle> {
  const root = await navigator.storage.getDirectory();
  return root.getDirectoryHandle(FOLDER, { create: true });
}

/** What is cut off in the middle is too short, and is not taken for an overview. */
async function write(
  folder: FileSystemDirectoryHandle,
  name: string,
  heightsM: Float32Array,
): Promise<void> {
  const handle = await folder.getFileHandle(name, { create: true });
  const file = await handle.createSyncAccessHandle();
  try {
    file.truncate(0);
    file.write(heightsM as Float32Array<ArrayBuffer>);
    file.flush();
  } finally {
    file.close();
  }
}

async function dropOldest(folder: FileSystemDirectoryHandle): Promise<void> {
  const kept: { name: string; at: number }[] = [];
  for await (const handle of folder.values()) {
    if (handle.kind !== "file") continue;
    kept.push({ name: handle.name, at: (await handle.getFile()).lastModified });
  }
  const newestFirst = kept.sort((a, b) => b.at - a.at);
  for (const { name } of newestFirst.slice(MOST_KEPT - 1)) await folder.removeEntry(name);
}

async function fileName(key: string): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(key));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
