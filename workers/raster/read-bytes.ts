import { Refusal, refusal } from "../../shared/failure.ts";
import type { TerrainFile } from "../../shared/messages.ts";

/**
 * A slice of a file, at most up to its end.
 * @throws Refusal `address/...` of a file at a web address, `raster/unreadable` when the file is gone or has changed since it was chosen
 */
export async function readBytes(file: TerrainFile, from: number, to: number): Promise<ArrayBuffer> {
  try {
    return await file.blob.slice(from, to).arrayBuffer();
  } catch (thrown) {
    if (thrown instanceof Refusal) throw thrown;
    throw refusal("raster/unreadable", { name: file.name, changed: false });
  }
}

/** The beginning of a small text file. */
export async function readText(file: TerrainFile, mostBytes: number): Promise<string> {
  return new TextDecoder().decode(await readBytes(file, 0, mostBytes));
}
