import { cornerChainages, signedAreaM2 } from "./alignment.ts";
import { checkWalk, totalsWithGround } from "./check-walk.ts";
import type { CutWalk } from "./cut-walk.ts";
import { type LineSamples, samplesLonLat } from "./line-samples.ts";
import { publishedCounts } from "./published.ts";
import type { Reach, SizedLine } from "./sizing-types.ts";
import { stationsOf } from "./stations.ts";
import { type LineOnGround, walkLine } from "./walk-line.ts";

export interface SizeLineInputs extends LineOnGround {
  /** True while something is dragged: totals at plus and minus one RMSE are left out. */
  readonly live: boolean;
}

/**
 * Sizes one alignment: lays it on the plan plane, walks it no coarser than half a cell, cuts the levee
 * across at every sample, and derives stations, quantities, published counts and checks.
 * Throws a `Refusal` for a line without enough corners or length, or too long for the ground's cells.
 */
export function sizeLine({ plan, alignment, plane, ground, live }: SizeLineInputs): SizedLine {
  const walked = walkLine({ plan, alignment, plane, ground });
  const { line, breaksM, built, surface, samples, surveyed, waterSide, cuts, whole, reaches } =
    walked;
  const on = { plan, alignment, plane, ground };
  const shifted = (shiftM: number) => (live ? null : totalsWithGround(on, walked, shiftM));
  const marks = [0, ...breaksM, line.lengthM];
  const found = checkWalk(on, walked, { holding: !live, time: !live });
  const { groundAccuracy } = found;
  return {
    id: alignment.id,
    name: alignment.name,
    kind: alignment.kind,
    enclosedM2: line.closed ? Math.abs(signedAreaM2(line)) : null,
    cornersM: cornerChainages(line),
    stations: stationsOf({
      ...{ plan, line, breaksM, samples, cuts, ground, plane, surface, waterSide, surveyed },
    }),
    walk: { ...walkOf(samples, cuts), lonLat: samplesLonLat(samples, plane) },
    totals: whole,
    surveyed,
    totalsGroundLow: shifted(-groundAccuracy.rmseM),
    totalsGroundHigh: shifted(groundAccuracy.rmseM),
    reaches: reaches.map((totals, i): Reach => {
      const { section, limitM } = built[i]!;
      const [fromM, toM] = [marks[i]!, marks[i + 1]!];
      return { fromM, toM, totals, section: section.id, sectionName: section.name, limitM };
    }),
    published: publishedCounts(samples, cuts),
    ...found,
    stepM: samples.stepM,
  };
}

function walkOf(samples: LineSamples, cuts: CutWalk) {
  return {
    chainageM: samples.chainageM,
    groundM: cuts.groundM,
    lowestGroundM: cuts.lowestGroundM,
    waterM: samples.waterM,
    crestM: samples.crestM,
    heightM: cuts.heightM,
    greatestHeightM: cuts.greatestHeightM,
    areaM2: cuts.areaM2,
    toeLeftM: cuts.toeLeftM,
    toeRightM: cuts.toeRightM,
    leftNormal: samples.leftNormal,
    leg: samples.leg,
  };
}
