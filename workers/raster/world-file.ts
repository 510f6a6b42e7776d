import { refusal } from "../../shared/failure.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import { type Affine, isUsableAffine, shiftAffine } from "./affine.ts";
import { readText } from "./read-bytes.ts";

/** A world file is six short lines; more than this is something else, bytes. */
const MOST_BYTES = 4096;

/**
 * Placement from a world file: six numbers, of which the last two are the centre of the first cell.
 * Source: Esri, world files (from memory).
 * @throws Refusal `raster/world-file`
 */
export async function worldFilePlacement(file: TerrainFile): Promise<Affine> {
  const text = await readText(file, MOST_BYTES);
  const numbers = text.trim().split(/\s+/).map(Number);
  const [xPerColumn, yPerColumn, xPerRow, yPerRow, x0, y0] = numbers as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const centred: Affine = { xPerColumn, yPerColumn, xPerRow, yPerRow, x0, y0 };
  if (numbers.length === 6 && isUsableAffine(centred)) return shiftAffine(centred, -0.5, -0.5);
  throw refusal("raster/world-file", { name: file.name });
}
