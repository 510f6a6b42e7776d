import { readdir, stat } from "node:fs/promises";
import { basename, dirname, isAbsolute, join, resolve } from "node:path";
import { FOLDER_LIMITS, isGroundName, refuseFolder } from "../../shared/raster-files.ts";
import { readVrt } from "../raster/vrt/vrt-files.ts";
import { isVrt } from "../raster/wanted-rasters.ts";
import { fileSlices } from "./file-slices.ts";

/**
 * The rasters that paths stand for: a folder for those in it, a VRT for itself and the files it names.
 * @throws Refusal `file/directory` for a folder without rasters, or as of `readVrt`
 */
export async function rastersAt(paths: readonly string[]): Promise<string[]> {
  const found = await Promise.all(paths.map(inFolder));
  const rasters = found.flat();
  const named = await Promise.all(rasters.filter(isVrt).map(namedIn));
  return [...new Set([...rasters, ...named.flat()])];
}

async function inFolder(path: string): Promise<string[]> {
  const about = await stat(path).catch(() => null);
  if (!about?.isDirectory()) return [path];
  const files: string[] = [];
  const look = async (folder: string, depth: number): Promise<void> => {
    const entries = await readdir(folder, { withFileTypes: true });
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const at = join(folder, entry.name);
      if (entry.isDirectory() && depth < FOLDER_LIMITS.depth) await look(at, depth + 1);
      else if (entry.isFile() && isGroundName(entry.name)) files.push(at);
      if (files.length > FOLDER_LIMITS.files) refuseFolder(path, files.length);
    }
  };
  await look(path, 1);
  if (files.length === 0) refuseFolder(path, 0);
  return files;
}

/** The files that a VRT names and that are there; the others are named when it is opened. */
async function namedIn(path: string): Promise<string[]> {
  const about = await stat(path).catch(() => null);
  if (!about?.isFile()) return [];
  const { sources } = await readVrt({ name: basename(path), blob: fileSlices(path, about.size) });
  const places = sources.map(({ path: source, isRelative }) => {
    const plain = source.replaceAll("\\", "/");
    return isRelative || !isAbsolute(plain) ? resolve(dirname(path), plain) : plain;
  });
  const there = await Promise.all(places.map((at) => stat(at).catch(() => null)));
  return places.filter((_, i) => there[i]?.isFile());
}
