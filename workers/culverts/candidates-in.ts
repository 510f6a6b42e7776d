import type { CulvertCandidate } from "../../shared/pipes/candidates.ts";
import type { LonLat } from "../../shared/plan.ts";
import { rounded } from "../../shared/plan-geometry.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import type { GridPlace } from "../water/water-grid.ts";
import { columnOf, neighbourSteps, rowOf } from "../water/water-grid.ts";
import { cellSteps } from "./cell-steps.ts";
import { type FramedHeights, filledLevels } from "./filled-levels.ts";
import { type Sag, sagsOf } from "./sags.ts";
import { type ThroughBank, throughBank } from "./through-bank.ts";

/** Shallower sags are left out, metres: three times the RMSE of common lidar (0.1 m). Source: judgement. */
const SAG_DEPTH_M = 0.3;
/** Smaller ones too, m2. Source: judgement. */
const SAG_AREA_M2 = 20;
/** A pipe begins no higher above the bottom of its sag, metres. Source: judgement. */
const NEAR_BOTTOM_M = 0.3;
/** Directions in which a way through a bank is looked for. */
const DIRECTIONS = 64;
/** Most candidates of one sag, and how far apart their middles are, metres. Source: judgement. */
const MOST_OF_SAG = 3;
const APART_M = 50;
/** Differences of ground below this count as none when candidates are compared, metres. */
const SAME_M = 0.05;

interface Way extends ThroughBank {
  readonly from: number;
}

/** Ground to look for culverts on; its place counts from its own first cell. */
export interface CulvertGround extends FramedHeights {
  readonly place: GridPlace;
}

/** Every candidate on some ground: by its sag, the lowest start first, then the shortest. */
export function candidatesIn(ground: CulvertGround): CulvertCandidate[] {
  const { columns, rows, place, heightM } = ground;
  const middle = [(columns - 1) / 2, (rows - 1) / 2] as const;
  const steps = cellSteps(place, middle, DIRECTIONS);
  const [ax, ay] = [steps[0]!, steps[DIRECTIONS / 4]!];
  const cellM2 = 1 / Math.abs(ax.columns * ay.rows - ax.rows * ay.columns);
  const { sags, sagOf } = sagsOf(ground, filledLevels(ground), SAG_DEPTH_M);
  return sags.flatMap((sag, index) => {
    const areaM2 = sag.cells.length * cellM2;
    if (areaM2 < SAG_AREA_M2) return [];
    const isSame = (cell: number) => sagOf[cell] === index + 1;
    const ways: Way[] = [];
    for (const from of startsIn(ground, sag)) {
      for (const step of steps) {
        const way = throughBank(ground, from, step, steps, isSame);
        if (way) ways.push({ from, ...way });
      }
    }
    return bestOf(ground, ways).map((way) => candidateOf(ground, sag, areaM2, way, heightM));
  });
}

/** Cells of a sag near its bottom that no neighbor is lower than; not those that lie in a level with all of them. */
function startsIn({ heightM, width }: FramedHeights, { cells, bottomM }: Sag): number[] {
  const around = neighbourSteps(width);
  return Array.from(cells).filter((cell) => {
    const height = heightM[cell]!;
    if (height > bottomM + NEAR_BOTTOM_M) return false;
    let isEdge = false;
    for (let s = 0; s < 8; s++) {
      const beside = heightM[cell + around[s]!]!;
      if (beside < height) return false;
      if (beside > height) isEdge = true;
    }
    return isEdge;
  });
}

/** The best ways out of one sag that are apart from each other. */
function bestOf({ heightM, place, width }: CulvertGround, ways: readonly Way[]): Way[] {
  const levelOf = ({ from }: Way) => Math.round(heightM[from]! / SAME_M);
  const inOrder = [...ways].sort(
    (a, b) => levelOf(a) - levelOf(b) || a.lengthM - b.lengthM || a.from - b.from || a.to - b.to,
  );
  const [first] = inOrder;
  if (!first) return [];
  const lonLat = (cell: number) =>
    place.toLonLat(columnOf({ width }, cell), rowOf({ width }, cell));
  const plane = planPlane(lonLat(first.from));
  const middleOf = ({ from, to }: Way) => {
    const [a, b] = [plane.toPlane(lonLat(from)), plane.toPlane(lonLat(to))];
    return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
  };
  const kept: { readonly way: Way; readonly at: readonly [number, number] }[] = [];
  for (const way of inOrder) {
    const at = middleOf(way);
    const isNear = kept.some(
      (each) => Math.hypot(each.at[0] - at[0], each.at[1] - at[1]) < APART_M,
    );
    if (!isNear) kept.push({ way, at });
    if (kept.length === MOST_OF_SAG) break;
  }
  return kept.map(({ way }) => way);
}

function candidateOf(
  { place, width }: CulvertGround,
  { bottomM, spillM }: Sag,
  sagAreaM2: number,
  { from, to, lengthM, bankM, leadsTo }: Way,
  heightM: Float32Array,
): CulvertCandidate {
  const lonLat = (cell: number): LonLat => {
    const [lon, lat] = place.toLonLat(columnOf({ width }, cell), rowOf({ width }, cell));
    return [rounded(lon), rounded(lat)];
  };
  const groundsM = [heightM[from]!, heightM[to]!] as const;
  return {
    ...{ ends: [lonLat(from), lonLat(to)], groundsM, lengthM, bankM, leadsTo, sagAreaM2 },
    fallM: groundsM[0] - groundsM[1],
    sagDepthM: spillM - bottomM,
  };
}
