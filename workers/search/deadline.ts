/** When a search ends: one object that everything it does looks at. */
export interface Deadline {
  /** No further lattice is searched once a ring is known: a part of the time is left for the lines. */
  readonly latticesOver: () => boolean;
  /** The time is up: what has been found is finished as it is. */
  readonly over: () => boolean;
  /** Shortly after: what has found nothing yet gives up too. */
  readonly givenUp: () => boolean;
  /** A deadline at a share of the time that is left; it gives up with the whole. */
  readonly part: (share: number) => Deadline;
}

/** Share of the time after which no further rings are looked for on lattices. */
const LATTICE_SHARE = 0.75;
/** Time beyond the cap for a search that has nothing to give yet, milliseconds. */
const GRACE_MS = 400;

/**
 * @param capMs time from now, milliseconds
 * @param now clock, milliseconds
 */
export function deadlineIn(capMs: number, now: () => number = () => performance.now()): Deadline {
  const startMs = now();
  return between(startMs, startMs + capMs, startMs + capMs + GRACE_MS, now);
}

function between(startMs: number, endMs: number, lastMs: number, now: () => number): Deadline {
  const latticesEndMs = startMs + LATTICE_SHARE * (endMs - startMs);
  return {
    latticesOver: () => now() > latticesEndMs,
    over: () => now() > endMs,
    givenUp: () => now() > lastMs,
    part(share) {
      const fromMs = now();
      return between(fromMs, fromMs + share * Math.max(0, endMs - fromMs), lastMs, now);
    },
  };
}
