import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { CheckedBuilding, CheckedGroup } from "../../shared/buildings/types.ts";

/** What a check of many buildings has answered, as it is kept on this device. */
export interface KeptCheck {
  readonly buildings: readonly CheckedBuilding[];
  /** Null where the check did not come to its end. */
  readonly groups: readonly CheckedGroup[] | null;
}

interface Answers {
  readonly check: string;
  readonly buildings: readonly CheckedBuilding[];
}

interface Shape extends DBSchema {
  answers: { key: number; value: Answers; indexes: { check: string } };
  groups: { key: string; value: readonly CheckedGroup[] };
  lists: { key: string; value: object };
}

let opened: Promise<IDBPDatabase<Shape>> | null = null;

function database(): Promise<IDBPDatabase<Shape>> {
  opened ??= openDB<Shape>("drystead-buildings", 1, {
    upgrade(db) {
      db.createObjectStore("answers", { autoIncrement: true }).createIndex("check", "check");
      db.createObjectStore("groups");
      db.createObjectStore("lists");
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

/** What is kept of a check; nothing where this browser keeps nothing. */
export async function readKeptCheck(check: string): Promise<KeptCheck> {
  try {
    const db = await database();
    const answers = await db.getAllFromIndex("answers", "check", check);
    const groups = (await db.get("groups", check)) ?? null;
    return { buildings: answers.flatMap(({ buildings }) => buildings), groups };
  } catch {
    return { buildings: [], groups: null };
  }
}

/** Keeps more answers of a check, beside those kept before. @throws where there is no room */
export async function addKeptAnswers(
  check: string,
  buildings: readonly CheckedBuilding[],
): Promise<void> {
  await (await database()).add("answers", { check, buildings });
}

/** Keeps the groups of a check that came to its end. @throws where there is no room */
export async function keepGroups(check: string, groups: readonly CheckedGroup[]): Promise<void> {
  await (await database()).put("groups", groups, check);
}

/** Removes what is kept of all checks but one. */
export async function dropOtherChecks(check: string): Promise<void> {
  const db = await database();
  const transaction = db.transaction(["answers", "groups"], "readwrite");
  for await (const cursor of transaction.objectStore("answers")) {
    if (cursor.value.check !== check) await cursor.delete();
  }
  for await (const cursor of transaction.objectStore("groups")) {
    if (cursor.key !== check) await cursor.delete();
  }
  await transaction.done;
}

/** Keeps the list of buildings that is looked at on some elevation data, in place of that of all others. */
export async function keepList(ground: string, list: object): Promise<void> {
  const transaction = (await database()).transaction("lists", "readwrite");
  await Promise.all([transaction.store.clear(), transaction.store.put(list, ground)]);
  await transaction.done;
}

/** Forgets the list of every elevation data. */
export async function forgetLists(): Promise<void> {
  await (await database()).clear("lists");
}

/** The list that was looked at on some elevation data; null where none is kept. */
export async function keptList<List extends object>(ground: string): Promise<List | null> {
  const found = await (await database()).get("lists", ground).catch(() => undefined);
  return (found as List | undefined) ?? null;
}
