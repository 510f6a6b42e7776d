/** Uniform numbers in [0, 1) from an integer seed; the same sequence on every machine (mulberry32). */
function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const LATTICE = 256;

/** Smooth noise of unit wavelength with values in [-1, 1]; it repeats every 256 wavelengths. */
export function smoothNoise(seed: number): (x: number, y: number) => number {
  const random = seededRandom(seed);
  const lattice = Float64Array.from({ length: LATTICE * LATTICE }, () => 2 * random() - 1);
  const corner = (column: number, row: number) =>
    lattice[(row & (LATTICE - 1)) * LATTICE + (column & (LATTICE - 1))]!;
  return (x, y) => {
    const column = Math.floor(x);
    const row = Math.floor(y);
    const across = ease(x - column);
    const up = ease(y - row);
    const near = mix(corner(column, row), corner(column + 1, row), across);
    const far = mix(corner(column, row + 1), corner(column + 1, row + 1), across);
    return mix(near, far, up);
  };
}

export function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}

/** 0 to 1 with level ends; the input is held inside [0, 1]. */
export function ease(share: number): number {
  const held = Math.min(1, Math.max(0, share));
  return held * held * (3 - 2 * held);
}
