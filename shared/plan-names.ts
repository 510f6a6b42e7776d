import { letterOf } from "./line-letter.ts";

/** Gives out identifiers and names of one kind of feature, stepping round those that are stated or given. */
export interface Naming {
  /** Tells of an identifier and a name the file states, before any is given. */
  state(id: string | null, name: string | null): void;
  /** The wanted identifier, or a new one when there is none or it was given before. */
  giveId(wanted: string | null): string;
  /** The wanted name, or a new one. */
  giveName(wanted: string | null): string;
}

/**
 * Each name is looked for from where the last was found, for none becomes free again: thousands are given at once.
 * @param idStem e.g. `structure-`
 * @param nameAt names in the order in which they are given, of which the first that is not taken is
 */
export function naming(idStem: string, nameAt: NameAt): Naming {
  const givenIds = new Set<string>();
  const takenIds = new Set<string>();
  const takenNames = new Set<string>();
  const nextId = nextFree(takenIds, numbered(idStem));
  const nextName = nextFree(takenNames, nameAt);
  return {
    state(id, name) {
      if (id !== null) takenIds.add(id);
      if (name !== null) takenNames.add(name);
    },
    giveId(wanted) {
      const id = wanted !== null && !givenIds.has(wanted) ? wanted : nextId();
      givenIds.add(id);
      takenIds.add(id);
      return id;
    },
    giveName(wanted) {
      const name = wanted ?? nextName();
      takenNames.add(name);
      return name;
    },
  };
}

/** The name at a place in the order in which names are given, from 0. */
type NameAt = (index: number) => string;

/** The first letter name, A, B ... Z, AA, AB ..., that is not taken. */
export function freeLetter(taken: ReadonlySet<string>): string {
  return nextFree(taken, letterOf)();
}

/** The first of "Building 1", "Building 2" ... (with the stem "Building ") that is not taken. */
export function freeNumbered(taken: ReadonlySet<string>, stem: string): string {
  return nextFree(taken, numbered(stem))();
}

/** An identifier and a name that none of the others has, of their stems and a number. */
export function freeNames(
  nameStem: string,
  idStem: string,
  others: readonly { readonly id: string; readonly name: string }[],
): { readonly id: string; readonly name: string } {
  return {
    id: freeNumbered(new Set(others.map(({ id }) => id)), idStem),
    name: freeNumbered(new Set(others.map(({ name }) => name)), nameStem),
  };
}

/** "Building 1", "Building 2" ... with the stem "Building ". */
export function numbered(stem: string): NameAt {
  return (index) => `${stem}${index + 1}`;
}

/** Gives the first name that is not taken, and the next time goes on from there. */
function nextFree(taken: ReadonlySet<string>, nameAt: NameAt): () => string {
  let index = 0;
  return () => {
    while (taken.has(nameAt(index))) index++;
    return nameAt(index);
  };
}
