import type { ImageFileDirectory } from "geotiff";
import { refusal } from "../../../shared/failure.ts";
import { type Affine, isUsableAffine, shiftAffine } from "../affine.ts";
import { tagNumbers } from "./tags.ts";

/**
 * Where the grid lies in its reference. Source of the tags and of the half-cell shift of point rasters:
 * OGC 19-008r4, GeoTIFF 1.1. The scale in y is taken downwards whatever its sign, as GDAL does.
 * @param pixelIsPoint true only when GTRasterTypeGeoKey is 2
 * @returns null when the file has no placement of its own
 * @throws Refusal `raster/control-points`, `raster/no-grid` when it has one that places nothing
 */
export function placementOf(
  name: string,
  directory: ImageFileDirectory,
  pixelIsPoint: boolean,
): Affine | null {
  const scale = tagNumbers(directory, "ModelPixelScale");
  const tie = tagNumbers(directory, "ModelTiepoint");
  const matrix = tagNumbers(directory, "ModelTransformation");
  const affine = fromScale(scale, tie) ?? fromMatrix(matrix);
  if (!affine) {
    if (tie.length > 6) {
      throw refusal("raster/control-points", { name, points: tie.length / 6 });
    }
    return null;
  }
  if (!isUsableAffine(affine)) {
    throw refusal("raster/no-grid", { name });
  }
  return pixelIsPoint ? shiftAffine(affine, -0.5, -0.5) : affine;
}

function fromScale(scale: ArrayLike<number>, tie: ArrayLike<number>): Affine | null {
  if (scale.length < 2 || tie.length < 6) return null;
  const [sx, sy] = [scale[0]!, Math.abs(scale[1]!)];
  const origin: Affine = {
    x0: tie[3]!,
    y0: tie[4]!,
    xPerColumn: sx,
    xPerRow: 0,
    yPerColumn: 0,
    yPerRow: -sy,
  };
  return shiftAffine(origin, -tie[0]!, -tie[1]!);
}

function fromMatrix(matrix: ArrayLike<number>): Affine | null {
  if (matrix.length < 16) return null;
  return {
    x0: matrix[3]!,
    y0: matrix[7]!,
    xPerColumn: matrix[0]!,
    xPerRow: matrix[1]!,
    yPerColumn: matrix[4]!,
    yPerRow: matrix[5]!,
  };
}

/** How stored numbers become heights by the third axis of a placement: height = number * scale + offset. */
interface HeightScale {
  readonly scale: number;
  readonly offset: number;
}

/**
 * The third axis of a placement, which maps stored numbers to heights where the file states a vertical
 * reference (OGC 19-008r4, raster to model space in three dimensions; GDAL writes scale and offset so).
 * @throws Refusal `raster/height-scale` when it maps all numbers to one height
 */
export function heightScaleOf(name: string, directory: ImageFileDirectory): HeightScale {
  const pixel = tagNumbers(directory, "ModelPixelScale");
  const tie = tagNumbers(directory, "ModelTiepoint");
  const matrix = tagNumbers(directory, "ModelTransformation");
  const byMatrix = matrix.length >= 16;
  const scale = (byMatrix ? matrix[10] : pixel[2]) ?? 0;
  const offset = byMatrix ? matrix[11]! : (tie[5] ?? 0) - (tie[2] ?? 0) * scale;
  if (scale === 0 && offset === 0) return { scale: 1, offset: 0 };
  return soundScale(name, { scale, offset });
}

/** No survey stores heights in smaller or larger units than these, metres or feet a number. Source: judgement. */
const SCALES = [1e-6, 1e4] as const;

/**
 * A scale and an offset that numbers become heights with.
 * @throws Refusal `raster/height-scale` when they map all numbers to one height, or to none on Earth
 */
export function soundScale(name: string, { scale, offset }: HeightScale): HeightScale {
  const size = Math.abs(scale);
  if (size >= SCALES[0] && size <= SCALES[1] && Number.isFinite(offset)) return { scale, offset };
  throw refusal("raster/height-scale", { name, scale, offset });
}
