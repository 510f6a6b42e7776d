import type { CrossSection } from "../../../shared/sizing-types.ts";

/** A stretch across the line, metres of offset, `fromM` < `toM`. */
export interface Across {
  readonly fromM: number;
  readonly toM: number;
}

/** Ground of a cross-section at any offset, straight between its points; NaN outside them and beside a hole. */
export function groundAcross(cross: CrossSection): (offsetM: number) => number {
  const { offsetM, groundM } = cross;
  const last = offsetM.length - 1;
  const rising = last < 1 || offsetM[last]! > offsetM[0]!;
  const at = (index: number) => (rising ? index : last - index);
  return (wantedM) => {
    if (last < 0 || wantedM < offsetM[at(0)]! || wantedM > offsetM[at(last)]!) return Number.NaN;
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (offsetM[at(middle)]! <= wantedM) low = middle;
      else high = middle;
    }
    const a = at(low);
    const b = at(high);
    const spanM = offsetM[b]! - offsetM[a]!;
    if (wantedM === offsetM[a]! || spanM === 0) return groundM[a]!;
    if (wantedM === offsetM[b]!) return groundM[b]!;
    const share = (wantedM - offsetM[a]!) / spanM;
    return groundM[a]! + share * (groundM[b]! - groundM[a]!);
  };
}

/** Offsets where the ground bends between two offsets, both ends included, in order. */
export function groundBends(cross: CrossSection, { fromM, toM }: Across): number[] {
  const inside = Array.from(cross.offsetM).filter((offset) => offset > fromM && offset < toM);
  return [fromM, ...inside.sort((a, b) => a - b), toM];
}

/** Lowest ground between the toes, metres; NaN when any of it is missing. */
export function lowestUnderBase(cross: CrossSection): number {
  const ground = groundAcross(cross);
  const base = { fromM: -cross.toeRightM, toM: cross.toeLeftM };
  return groundBends(cross, base).reduce((least, offset) => {
    const level = ground(offset);
    return level < least || Number.isNaN(level) ? level : least;
  }, Infinity);
}
