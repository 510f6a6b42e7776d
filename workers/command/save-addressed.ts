import { open } from "node:fs/promises";
import { join } from "node:path";
import { refusal } from "../../shared/failure.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import { copiedWords } from "../../shared/words/terminal.ts";
import { readBytes } from "../raster/read-bytes.ts";

/** A file that is copied whole is at most so large, bytes. */
const MOST_BYTES = 2_000_000_000;
const PART_BYTES = 16_000_000;

/**
 * Copies a raster at a web address into a folder, for a program that opens files alone.
 * @returns the path of the copy
 * @throws Refusal `print/address-too-large`, or as reading it does
 */
export async function saveAddressed(
  file: TerrainFile,
  folder: string,
  say: (sentence: string) => void,
): Promise<string> {
  const { name, blob } = file;
  const bytes = blob.size;
  if (bytes > MOST_BYTES) {
    throw refusal("print/address-too-large", { name, bytes, most: MOST_BYTES });
  }
  say(copiedWords(name, bytes));
  const path = join(folder, name.replace(/[^\p{L}\p{N}._-]/gu, "_"));
  const copy = await open(path, "wx");
  try {
    for (let from = 0; from < blob.size; from += PART_BYTES) {
      const part = await readBytes(file, from, Math.min(blob.size, from + PART_BYTES));
      await copy.write(new Uint8Array(part));
    }
  } finally {
    await copy.close();
  }
  return path;
}
