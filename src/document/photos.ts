import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type Refusal, refusal } from "../../shared/failure.ts";

/** A photo as it is saved on this device, beside the plan and not in its file. */
export interface StoredPhoto {
  readonly picture: Blob;
  readonly widthPx: number;
  readonly heightPx: number;
}

interface Shape extends DBSchema {
  photos: { key: string; value: StoredPhoto };
}

/** Longest side of a saved photo: a boil or a tear is seen, and a hundred photos are some 20 MB. */
const LONGEST_PX = 1280;
const QUALITY = 0.72;
/** A picture larger than this is not opened, bytes. */
const MOST_BYTES = 40_000_000;

let opened: Promise<IDBPDatabase<Shape>> | null = null;

function database(): Promise<IDBPDatabase<Shape>> {
  opened ??= openDB<Shape>("drystead-photos", 1, {
    upgrade: (db) => void db.createObjectStore("photos"),
    terminated() {
      opened = null;
    },
  });
  opened.catch(() => {
    opened = null;
  });
  return opened;
}

/**
 * Scales a photo down and saves it on this device.
 * @returns the identifier it is found by
 * @throws Refusal `photo/too-large`, `photo/unreadable`, `photo/no-room`; nothing else is lost then
 */
export async function storePhoto(file: File): Promise<string> {
  if (file.size > MOST_BYTES) {
    const { name, size: bytes } = file;
    throw refusal("photo/too-large", { name, bytes, mostBytes: MOST_BYTES });
  }
  const photo = await scaledDown(file);
  const id = crypto.randomUUID();
  try {
    await (await database()).put("photos", photo, id);
  } catch (thrown) {
    const cause = thrown instanceof Error ? thrown.message : String(thrown);
    throw refusal("photo/no-room", { cause });
  }
  return id;
}

/** A photo taken on this device; null where it was taken on another, or is gone. */
export async function storedPhoto(id: string): Promise<StoredPhoto | null> {
  return (await (await database()).get("photos", id).catch(() => undefined)) ?? null;
}

async function scaledDown(file: File): Promise<StoredPhoto> {
  const image = await createImageBitmap(file).catch(() => null);
  if (!image) throw unreadable(file);
  const share = Math.min(1, LONGEST_PX / Math.max(image.width, image.height));
  const widthPx = Math.max(1, Math.round(image.width * share));
  const heightPx = Math.max(1, Math.round(image.height * share));
  const canvas = document.createElement("canvas");
  canvas.width = widthPx;
  canvas.height = heightPx;
  canvas.getContext("2d")?.drawImage(image, 0, 0, widthPx, heightPx);
  image.close();
  const picture = await new Promise<Blob | null>((give) =>
    canvas.toBlob(give, "image/jpeg", QUALITY),
  );
  if (!picture) throw unreadable(file);
  return { picture, widthPx, heightPx };
}

function unreadable({ name, type }: File): Refusal {
  return refusal("photo/unreadable", { name, type });
}
