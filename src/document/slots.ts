const OWN = "drystead.slot";
const MOST_SLOTS = 16;
const OWN_WAIT_MS = 1000;

/**
 * A place to keep one plan that no other open page holds, until this page closes: this tab's own from before a
 * reload, else the latest kept one that is free, else an empty one. So pages that are open at once never write over
 * one another, and what a closed page kept is what the next page opens. Null when all are held.
 * @param recentFirst places that hold a plan, the latest first
 */
export async function takeSlot(recentFirst: readonly string[]): Promise<string | null> {
  const own = sessionStorage.getItem(OWN);
  if (own !== null && (await hold(own, OWN_WAIT_MS))) return own;
  return (await firstFree(recentFirst)) ?? (await takeEmptySlot(recentFirst));
}

/** As {@link takeSlot}, but only a place where nothing is kept yet. */
export function takeEmptySlot(occupied: readonly string[]): Promise<string | null> {
  const numbered = Array.from({ length: MOST_SLOTS }, (_, index) => `${index + 1}`);
  return firstFree(numbered.filter((name) => !occupied.includes(name)));
}

async function firstFree(names: readonly string[]): Promise<string | null> {
  for (const name of names) {
    if (!(await hold(name, 0))) continue;
    sessionStorage.setItem(OWN, name);
    return name;
  }
  return null;
}

function hold(name: string, waitMs: number): Promise<boolean> {
  if (!navigator.locks) return Promise.resolve(true);
  const options = waitMs > 0 ? { signal: AbortSignal.timeout(waitMs) } : { ifAvailable: true };
  return new Promise((resolve) => {
    const untilClosed = (lock: Lock | null) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise(() => {});
    };
    navigator.locks
      .request(`drystead.slot.${name}`, options, untilClosed)
      .catch(() => resolve(false));
  });
}
