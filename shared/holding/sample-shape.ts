import type { CutWalk } from "../cut-walk.ts";
import type { Section } from "../plan.ts";
import { sideSlope } from "../section.ts";
import type { Trace } from "../trace.ts";
import type { BodyShape } from "./free-body.ts";

/** A levee cut across, with its sides named by the water, and the water on it. */
export interface SampleShape extends BodyShape {
  readonly heightM: number;
  /** Run of the sides for each metre of rise. */
  readonly run: number;
  /** Depth of water above the waterside toe, never above the crest, metres. */
  readonly waterDepthM: number;
  /** Water surface above the landside toe, where seepage comes out; 0 where none stands outside, metres. */
  readonly headM: number;
  /** How much higher the landside toe lies than the waterside toe, metres; below 0 where it lies lower. */
  readonly toeRiseM: number;
}

/** Shape at one sample of the walk; null where nothing is built or ground is missing. */
export function shapeAt(
  i: number,
  trace: Trace,
  cuts: CutWalk,
  section: Section,
  waterSide: 1 | -1,
): SampleShape | null {
  const areaM2 = cuts.areaM2[i]!;
  if (!(areaM2 > 0)) return null;
  const left = waterSide === 1;
  return withWater(
    {
      crownM: section.crownM,
      areaM2,
      toeWaterM: (left ? cuts.toeLeftM : cuts.toeRightM)[i]!,
      toeLandM: (left ? cuts.toeRightM : cuts.toeLeftM)[i]!,
      dropWaterM: (left ? cuts.dropLeftM : cuts.dropRightM)[i]!,
      dropLandM: (left ? cuts.dropRightM : cuts.dropLeftM)[i]!,
    },
    cuts.heightM[i]!,
    sideSlope(section, cuts.heightM[i]!),
    trace.crestM[i]! - trace.waterM[i]!,
  );
}

/** Adds the water to a section; `freeM` is crest less water surface. */
export function withWater(
  shape: BodyShape,
  heightM: number,
  run: number,
  freeM: number,
): SampleShape {
  const clearM = Math.max(0, freeM);
  const waterDepthM = Math.max(0, shape.dropWaterM - clearM);
  const toeRiseM = shape.dropWaterM - shape.dropLandM;
  return {
    ...shape,
    heightM,
    run,
    waterDepthM,
    headM: waterDepthM > 0 ? Math.max(0, waterDepthM - toeRiseM) : 0,
    toeRiseM,
  };
}
