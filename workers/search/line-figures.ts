import type { GroundSampler } from "../../shared/ground.ts";
import { shareAbove } from "../../shared/volume.ts";
import type { SearchTerms } from "./search-terms.ts";
import { type Shape, signedDistance } from "./shape.ts";
import type { LineFigures, Point } from "./types.ts";

/** What a fine walk along a line found, on the ground itself and not on the search's lattice. */
export interface LineWalk {
  readonly figures: LineFigures;
  /**
   * For each obstacle of the site the least distance from the line to it, less its clearance (the setback for
   * a structure, nothing for others) and half the base at the height there, metres; Infinity where far.
   */
  readonly ruleSpareM: Float64Array;
  /** The same with the distance from the toe, where the section meets the ground, in place of the half base. */
  readonly toeSpareM: Float64Array;
  /** Length on which ground under the base is missing, metres. */
  readonly blindM: number;
}

/** Values at one sample of a walk. */
interface Sample {
  areaM2: number;
  levelM2: number;
  heightM: number;
  greatestM: number;
}

const COARSEST_M = 0.5;
/** Spacing at which clearances are looked at near obstacles, metres. */
const CLOSE_STEP_M = 0.1;
/** Beyond this from the clearance no half base reaches, metres. */
const FAR_M = 6;

/**
 * Walks a line with samples no further apart than half a cell and 0.5 m, cuts the section at each, and
 * adds volumes up by average end areas: the way the ordinary sizing counts.
 * @param corners first not repeated when closed
 */
export function walkLine(terms: SearchTerms, corners: readonly Point[], closed: boolean): LineWalk {
  const { request } = terms;
  const ground = terms.ground.source;
  const stepM = Math.min(COARSEST_M, ground.cellM / 2);
  const ruleSpareM = new Float64Array(terms.obstacles.length).fill(Infinity);
  const toeSpareM = ruleSpareM.slice();
  const sum = { volume: 0, level: 0, length: 0, built: 0, greatest: 0, over: 0, blind: 0 };
  const legs = closed ? corners.length : corners.length - 1;
  const before: Sample = { areaM2: 0, levelM2: 0, heightM: 0, greatestM: 0 };
  const here: Sample = { areaM2: 0, levelM2: 0, heightM: 0, greatestM: 0 };
  for (let k = 0; k < legs; k++) {
    const [x1, y1] = corners[k]!;
    const [x2, y2] = corners[(k + 1) % corners.length]!;
    const length = Math.hypot(x2 - x1, y2 - y1);
    if (length < 1e-6) continue;
    const steps = Math.max(1, Math.ceil(length / stepM - 1e-9));
    const leftX = -(y2 - y1) / length;
    const leftY = (x2 - x1) / length;
    const stretch = length / steps;
    for (let i = 0; i <= steps; i++) {
      const t = i / steps;
      sampleAt(
        terms,
        ground,
        x1 + t * (x2 - x1),
        y1 + t * (y2 - y1),
        leftX,
        leftY,
        here,
        toeSpareM,
      );
      if (i > 0) addStretch(sum, before, here, stretch, request.rule.limitM);
      Object.assign(before, here);
    }
    sum.length += length;
    closeLook(terms, ground, corners[k]!, corners[(k + 1) % corners.length]!, ruleSpareM);
  }
  const figures = {
    volumeM3: sum.volume,
    levelVolumeM3: sum.level,
    lengthM: sum.length,
    builtLengthM: sum.built,
    greatestHeightM: sum.greatest,
    overLimitM: sum.over,
  };
  return { figures, ruleSpareM, toeSpareM, blindM: sum.blind };
}

function sampleAt(
  terms: SearchTerms,
  ground: GroundSampler,
  x: number,
  y: number,
  leftX: number,
  leftY: number,
  out: Sample,
  spareM: Float64Array,
): void {
  const { request, obstacles } = terms;
  const { section } = request;
  const crestM = terms.crest.at(x, y);
  out.heightM = crestM - ground.heightAt(x, y);
  out.levelM2 = section.areaAt(Math.max(0, out.heightM));
  out.areaM2 = out.levelM2;
  out.greatestM = Math.max(0, out.heightM);
  let toeLeftM = section.halfBaseAt(Math.max(0, out.heightM));
  let toeRightM = toeLeftM;
  if (section.cut && out.heightM > 0) {
    const cut = section.cut(x, y, leftX, leftY, crestM);
    out.areaM2 = cut.areaM2;
    out.greatestM = crestM - cut.lowestM;
    toeLeftM = cut.toeLeftM;
    toeRightM = cut.toeRightM;
  }
  const { setbackM } = request.rule;
  for (let s = 0; s < spareM.length; s++) {
    const { shape, role } = obstacles[s]!;
    const clearM = role === "structure" ? setbackM : 0;
    if (farFrom(shape, x, y, clearM + Math.max(toeLeftM, toeRightM) + 1)) continue;
    const toe = Math.min(
      signedDistance(shape, x + leftX * toeLeftM, y + leftY * toeLeftM),
      signedDistance(shape, x - leftX * toeRightM, y - leftY * toeRightM),
    );
    spareM[s] = Math.min(spareM[s]!, toe - clearM);
  }
}

function farFrom(shape: Shape, x: number, y: number, nearM: number): boolean {
  return (
    x < shape.minX - nearM ||
    x > shape.maxX + nearM ||
    y < shape.minY - nearM ||
    y > shape.maxY + nearM
  );
}

/** Looks closely along a leg at the clearance from its centre line less the half base. */
function closeLook(
  { request, obstacles, crest }: SearchTerms,
  ground: GroundSampler,
  [x1, y1]: Point,
  [x2, y2]: Point,
  spareM: Float64Array,
): void {
  const steps = Math.ceil(Math.hypot(x2 - x1, y2 - y1) / CLOSE_STEP_M);
  for (let s = 0; s < spareM.length; s++) {
    const { shape, role } = obstacles[s]!;
    const clearM = role === "structure" ? request.rule.setbackM : 0;
    for (let i = 0; i <= steps; ) {
      const x = x1 + (i / steps) * (x2 - x1);
      const y = y1 + (i / steps) * (y2 - y1);
      const distance = signedDistance(shape, x, y);
      if (distance > clearM + FAR_M) {
        i += Math.max(1, Math.floor((distance - clearM - FAR_M) / CLOSE_STEP_M));
        continue;
      }
      const heightM = crest.at(x, y) - ground.heightAt(x, y);
      const halfM = heightM > 0 ? request.section.halfBaseAt(heightM) : 0;
      spareM[s] = Math.min(spareM[s]!, distance - halfM - clearM);
      i++;
    }
  }
}

function addStretch(
  sum: {
    volume: number;
    level: number;
    built: number;
    greatest: number;
    over: number;
    blind: number;
  },
  from: Sample,
  to: Sample,
  stretchM: number,
  limitM: number,
): void {
  const volume = ((from.areaM2 + to.areaM2) / 2) * stretchM;
  const level = ((from.levelM2 + to.levelM2) / 2) * stretchM;
  if (!Number.isFinite(volume + level)) {
    sum.blind += stretchM;
    return;
  }
  sum.volume += volume;
  sum.level += level;
  sum.built += stretchM * shareAbove(from.heightM, to.heightM, 0);
  sum.over += stretchM * shareAbove(from.greatestM, to.greatestM, limitM);
  sum.greatest = Math.max(sum.greatest, from.greatestM, to.greatestM);
}
