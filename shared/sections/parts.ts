import type { SectionPart, SectionPiece, SectionShape } from "./types.ts";

/** A height over an offset, straight between its points. */
export type Profile = (offsetM: number) => number;

/** What a cut shows, in offsets from right to left. */
export interface BodyCut {
  readonly crestM: number;
  readonly waterSide: 1 | -1;
  readonly toeLeftM: number;
  readonly toeRightM: number;
  readonly ground: Profile;
  /** Offsets, rising, between which the ground is straight. */
  readonly offsetM: ArrayLike<number>;
}

/** Thinner than this is not drawn, metres. */
const LEAST_M = 1e-4;

/** Elevation of a shape's top over an offset, its crown at `topM`; an upright face ends it. */
export function topOf(
  { crownM, runWater, runLand }: SectionShape,
  topM: number,
  waterSide: 1 | -1,
): Profile {
  return (offsetM) => {
    const beyondM = Math.abs(offsetM) - crownM / 2;
    if (beyondM <= 1e-9) return topM;
    const run = Math.sign(offsetM) === waterSide ? runWater : runLand;
    return run > 0 ? topM - beyondM / run : Number.NEGATIVE_INFINITY;
  };
}

/**
 * Outlines of what lies below one profile and above another between two offsets: one for each stretch on which
 * it is thicker than nothing. `marks` are offsets at which either turns.
 */
export function between(
  upper: Profile,
  lower: Profile,
  fromM: number,
  toM: number,
  marks: Iterable<number>,
): Float64Array[] {
  const inside = [...marks].filter((m) => m > fromM && m < toM);
  const turns = [...new Set([fromM, ...inside, toM])].sort((a, b) => a - b);
  const offsets = withCrossings(turns, (m) => upper(m) - lower(m));
  const outlines: Float64Array[] = [];
  let run: number[] = [];
  const close = () => {
    if (run.some((m) => upper(m) - lower(m) > LEAST_M)) outlines.push(outlineOf(run, upper, lower));
    run = [];
  };
  for (const [i, m] of offsets.entries()) {
    const thick = upper(m) - lower(m) > LEAST_M;
    const nearThick = [i - 1, i + 1].some(
      (k) => offsets[k] !== undefined && upper(offsets[k]) - lower(offsets[k]) > LEAST_M,
    );
    if (thick || nearThick) run.push(m);
    if (!thick && run.length > 1) {
      close();
      if (nearThick) run.push(m);
    }
  }
  close();
  return outlines;
}

function outlineOf(offsets: readonly number[], upper: Profile, lower: Profile): Float64Array {
  const over = offsets.flatMap((m) => [m, Math.max(upper(m), lower(m))]);
  const under = offsets.toReversed().flatMap((m) => [m, lower(m)]);
  return Float64Array.from([...over, ...under]);
}

/** Offsets, and those between them at which a difference that is straight between them is nothing. */
function withCrossings(offsets: readonly number[], differenceAt: Profile): number[] {
  return offsets.flatMap((m, i) => {
    const next = offsets[i + 1];
    if (next === undefined) return [m];
    const [here, there] = [differenceAt(m), differenceAt(next)];
    const crosses = here * there < 0 && Number.isFinite(here) && Number.isFinite(there);
    return crosses ? [m, m + ((next - m) * here) / (here - there)] : [m];
  });
}

/** A board or post over the ground, its offsets as in the cut. Its outline is convex. */
export function pieceParts({ material, outline }: SectionPiece, cut: BodyCut): SectionPart[] {
  const corners = outline.map(([offsetM, overM]): [number, number] => [
    offsetM * cut.waterSide,
    cut.crestM + overM,
  ]);
  const offsets = corners.map(([offsetM]) => offsetM);
  const [fromM, toM] = [Math.min(...offsets), Math.max(...offsets)];
  const edge = (pick: (...heights: number[]) => number): Profile => {
    return (offsetM) => pick(...heightsAt(corners, offsetM));
  };
  const lower = edge(Math.min);
  const marks = [...offsets, ...Array.from(cut.offsetM)];
  return between(edge(Math.max), (m) => Math.max(lower(m), cut.ground(m)), fromM, toM, marks).map(
    (outlineM) => ({ material, outlineM }),
  );
}

/** Heights at which a closed outline is met at an offset. */
function heightsAt(corners: readonly (readonly [number, number])[], offsetM: number): number[] {
  return corners.flatMap(([fromM, fromHeightM], i) => {
    const [toM, toHeightM] = corners[(i + 1) % corners.length]!;
    const [low, high] = [Math.min(fromM, toM), Math.max(fromM, toM)];
    if (offsetM < low - 1e-12 || offsetM > high + 1e-12) return [];
    if (high - low < 1e-12) return [fromHeightM, toHeightM];
    const share = (offsetM - fromM) / (toM - fromM);
    return [fromHeightM + share * (toHeightM - fromHeightM)];
  });
}
