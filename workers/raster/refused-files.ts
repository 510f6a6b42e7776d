import { Refusal } from "../../shared/failure.ts";

/** A file that was not opened, and why. */
export interface RefusedFile {
  readonly name: string;
  readonly refusal: Refusal;
}

const MOST_NAMED = 5;

/**
 * One refusal for all files that were refused: why the first of them was, damaged rasters before files that
 * are no raster, and the names of the others.
 * @param of how many files came
 */
export function allRefused(files: readonly RefusedFile[], of: number): Refusal {
  const isOther = ({ refusal }: RefusedFile) => refusal.code === "raster/unknown-format";
  const [first, ...others] = [...files].sort((p, q) => Number(isOther(p)) - Number(isOther(q)));
  const { code, message, remedy } = first!.refusal;
  if (others.length === 0) return first!.refusal;
  const named = others.slice(0, MOST_NAMED).map(({ name }) => `"${name}"`);
  const more = others.length - named.length;
  const list = more > 0 ? `${named.join(", ")} and ${more} more` : named.join(", ");
  return new Refusal(
    code,
    `${message} Of the ${of} files, ${others.length} more cannot be read as elevation data: ${list}.`,
    `${remedy} Open elevation data without other files.`,
  );
}
