/** Gives out identifiers and names of one kind of feature, stepping round those that are stated or given. */
export interface Naming {
  /** Tells of an identifier and a name the file states, before any is given. */
  state(id: string | null, name: string | null): void;
  /** The wanted identifier, or a new one when there is none or it was given before. */
  giveId(wanted: string | null): string;
  /** The wanted name, or a new one. */
  giveName(wanted: string | null): string;
}

/** @param idStem e.g. `structure-` @param freeName the first name that is not taken */
export function naming(idStem: string, freeName: (taken: ReadonlySet<string>) => string): Naming {
  const statedIds = new Set<string>();
  const givenIds = new Set<string>();
  const names = new Set<string>();
  return {
    state(id, name) {
      if (id !== null) statedIds.add(id);
      if (name !== null) names.add(name);
    },
    giveId(wanted) {
      const free = wanted !== null && !givenIds.has(wanted);
      const id = free ? wanted : freeNumbered(new Set([...givenIds, ...statedIds]), idStem);
      givenIds.add(id);
      return id;
    },
    giveName(wanted) {
      const name = wanted ?? freeName(names);
      names.add(name);
      return name;
    },
  };
}

/** The first letter name, A, B ... Z, AA, AB ..., that is not taken. */
export function freeLetter(taken: ReadonlySet<string>): string {
  return firstFree(taken, letters);
}

/** The first of "Building 1", "Building 2" ... (with the stem "Building ") that is not taken. */
export function freeNumbered(taken: ReadonlySet<string>, stem: string): string {
  return firstFree(taken, (index) => `${stem}${index + 1}`);
}

function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}

function firstFree(taken: ReadonlySet<string>, make: (index: number) => string): string {
  let index = 0;
  while (taken.has(make(index))) index++;
  return make(index);
}
