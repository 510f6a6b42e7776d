/** Standard normal numbers that are the same for the same seed: uniform ones by sfc32, then the polar method. */
export function normals(seed: number): () => number {
  const uniform = sfc32(seed);
  let spare = Number.NaN;
  return () => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * scale;
      return x * scale;
    }
  };
}

const WARM_UP = 15;

/** Uniform numbers in [0, 1). Source: Chris Doty-Humphrey, PractRand, sfc32; public domain. */
function sfc32(seed: number): () => number {
  let [a, b, c, counter] = [0x9e3779b9, 0x243f6a88, seed | 0, 1];
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return (sum >>> 0) / 4_294_967_296;
  };
  for (let i = 0; i < WARM_UP; i++) next();
  return next;
}
