import { signal } from "@preact/signals";
import type { StorageRoom } from "../../shared/words/storage-room.ts";
import { recall, remember } from "../browser/remember.ts";

/** What the browser saves of this program; null while it does not say. */
export const storageRoom = signal<StorageRoom | null>(null);

/** With less room than this left, elevation data may soon not be saved, bytes. */
const LOW_BYTES = 50_000_000;
/** How often the browser is asked, milliseconds. */
const LOOK_EVERY_MS = 60_000;
const ASKED = "drystead.storage-asked";

type Storage = Pick<StorageManager, "estimate" | "persist" | "persisted">;

interface RoomReports {
  /** The browser's storage; undefined where it has none for this page. */
  readonly storage: Storage | undefined;
  /** Little room is left; called once until there is more again. */
  readonly onLow: (leftBytes: number) => void;
}

/**
 * Follows the room that the browser has for plans and elevation data into {@link storageRoom}. Once a person's edit
 * is saved it asks the browser not to clear them, once on this machine, since some browsers ask the person then.
 * @returns to be called whenever the plan is saved, with whether a person has edited it
 */
export function followRoom({ storage, onLow }: RoomReports): (isEdited: boolean) => Promise<void> {
  let lookedMs = Number.NEGATIVE_INFINITY;
  let isLow = false;
  return async (isEdited) => {
    if (!storage?.estimate) return;
    const isToAsk = isEdited && recall(ASKED, "no") === "no";
    if (isToAsk) remember(ASKED, "yes");
    if (!isToAsk && Date.now() - lookedMs < LOOK_EVERY_MS) return;
    lookedMs = Date.now();
    try {
      let stays = await storage.persisted();
      if (isToAsk && !stays) stays = await storage.persist();
      const { usage, quota } = await storage.estimate();
      if (usage === undefined || quota === undefined) return;
      const leftBytes = Math.max(0, quota - usage);
      storageRoom.value = { usedBytes: usage, leftBytes, stays };
      const wasLow = isLow;
      isLow = leftBytes < LOW_BYTES;
      if (isLow && !wasLow) onLow(leftBytes);
    } catch {
      storageRoom.value = null;
    }
  };
}
