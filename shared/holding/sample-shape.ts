import { builtAt, type CutWalk } from "../cut-walk.ts";
import type { LineSamples } from "../line-samples.ts";
import type { SectionShape } from "../sections/types.ts";
import type { CutShape } from "./levee-body.ts";

/** A levee cut across, with its sides named by the water, and the water on it. */
export interface SampleShape extends CutShape {
  readonly heightM: number;
  /** Depth of water above the waterside toe, never above the crest, metres. */
  readonly waterDepthM: number;
  /** Water surface above the landside toe, where seepage comes out; 0 where none stands outside, metres. */
  readonly headM: number;
}

const SHAPE: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };

/** Shape at one sample of the walk; null where nothing is built or ground is missing. */
export function shapeAt(
  i: number,
  samples: LineSamples,
  cuts: CutWalk,
  waterSide: 1 | -1,
): SampleShape | null {
  const areaM2 = cuts.bodyM2[i]!;
  if (!(areaM2 > 0)) return null;
  const { section, figures } = builtAt(cuts, i);
  section.shapeInto(SHAPE, cuts.heightM[i]!, figures);
  const left = waterSide === 1;
  return withWater(
    {
      ...SHAPE,
      areaM2,
      toeWaterM: (left ? cuts.toeLeftM : cuts.toeRightM)[i]!,
      toeLandM: (left ? cuts.toeRightM : cuts.toeLeftM)[i]!,
      dropWaterM: (left ? cuts.dropLeftM : cuts.dropRightM)[i]!,
      dropLandM: (left ? cuts.dropRightM : cuts.dropLeftM)[i]!,
    },
    cuts.heightM[i]!,
    samples.crestM[i]! - samples.waterM[i]!,
  );
}

/** Adds the water to a section; `freeM` is crest less water surface. */
export function withWater(shape: CutShape, heightM: number, freeM: number): SampleShape {
  const clearM = Math.max(0, freeM);
  const waterDepthM = Math.max(0, shape.dropWaterM - clearM);
  const headM = waterDepthM > 0 ? Math.max(0, shape.dropLandM - clearM) : 0;
  return { ...shape, heightM, waterDepthM, headM };
}
