import { asFailure, type Refusal, refusal } from "../../shared/failure.ts";

/** A file that was not opened, and why. */
export interface RefusedFile {
  readonly name: string;
  readonly refusal: Refusal;
}

/**
 * One refusal for all files that were refused: why the first of them was, damaged rasters before files that
 * are no raster, and the names of the others.
 * @param of how many files came
 */
export function allRefused(files: readonly RefusedFile[], of: number): Refusal {
  const isOther = ({ refusal }: RefusedFile) => refusal.code === "raster/unknown-format";
  const [first, ...others] = [...files].sort((p, q) => Number(isOther(p)) - Number(isOther(q)));
  if (others.length === 0) return first!.refusal;
  const names = others.map(({ name }) => name);
  return refusal("raster/several", { first: asFailure(first!.refusal), of, others: names });
}
