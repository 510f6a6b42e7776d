import { constants } from "node:fs";
import { access, readdir, readFile, stat } from "node:fs/promises";
import { basename, dirname, extname, isAbsolute, join } from "node:path";
import { Refusal, refusal } from "../../shared/failure.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import { MAX_PLAN_CHARACTERS, type ReadPlan, readPlanFile } from "../../shared/plan-file.ts";
import { askRange, askSize } from "../../shared/ranges.ts";
import { isAddress, readRasterAddress } from "../../shared/raster-address.ts";
import { SIDE_CAR_ENDINGS } from "../../shared/raster-files.ts";
import type { FileRole } from "../../shared/words/refusals/terminal.ts";
import { rangedFile } from "../raster/ranged-file.ts";
import { readVrt } from "../raster/vrt/vrt-files.ts";
import { isVrt } from "../raster/wanted-rasters.ts";
import { fileSlices } from "./file-slices.ts";
import { rastersAt } from "./named-rasters.ts";

/**
 * The plan in a file.
 * @throws Refusal for a file that cannot be read, is no plan, or states no water level
 */
export async function readPlan(path: string): Promise<ReadPlan> {
  const bytes = await sizeOf(path, "plan");
  const most = 4 * MAX_PLAN_CHARACTERS;
  if (bytes > most) throw refusal("plan/file-too-large", { path, bytes, most });
  const read = readPlanFile(await readFile(path, "utf8"));
  if (read.ok && read.value.waterStated) return read.value;
  if (!read.ok) throw refusal("plan/in-file", { path, why: read.failure });
  const unknown = Object.keys(read.value.plan.carried?.settings.water ?? {});
  throw refusal("plan/no-water-given", { path, unknown });
}

/**
 * The rasters named, those in folders and VRTs that are named, and the side-car files that lie beside them; read by slices later, never whole. One at a web
 * address is read by ranges, alone.
 * @throws Refusal for a file that cannot be read
 */
export async function terrainFiles(paths: readonly string[]): Promise<TerrainFile[]> {
  const here = await withSideCars(paths.filter((path) => !isAddress(path)));
  const there = (await Promise.all(paths.filter(isAddress).map(filesAt))).flat();
  const files = here.map(({ path, bytes }) => ({
    name: basename(path),
    blob: fileSlices(path, bytes),
  }));
  return [...files, ...there];
}

/**
 * What an address stands for: the raster there; a VRT for itself and the files it names, beside it on its own host.
 * @throws Refusal `address/vrt-source`, or as of `rangedFile` and `readVrt`
 */
async function filesAt(path: string): Promise<TerrainFile[]> {
  const file = await fileAt(path);
  if (!isVrt(file.name)) return [file];
  const { sources } = await readVrt(file);
  const named = new Set(sources.map((source) => besideAddress(path, file.name, source.path)));
  if (named.size > MOST_AT_ADDRESS) {
    const counts = { files: named.size, most: MOST_AT_ADDRESS };
    throw refusal("address/vrt-files", { name: file.name, ...counts });
  }
  return [file, ...(await Promise.all([...named].map(fileAt)))];
}

/** Most files that one address may have read. */
const MOST_AT_ADDRESS = 200;

/** Address of a file that a VRT names, which counts from the VRT's own place. */
function besideAddress(address: string, vrt: string, source: string): string {
  const plain = source.replaceAll("\\", "/");
  if (isAbsolute(plain)) throw refusal("address/vrt-source", { name: vrt, source: plain });
  return new URL(plain.split("/").map(encodeURIComponent).join("/"), address.trim()).href;
}

/** A raster at a web address, read by ranges from that host alone. @throws Refusal as of `rangedFile` */
async function fileAt(path: string): Promise<TerrainFile> {
  const read = readRasterAddress(path);
  if (!read.ok) throw new Refusal(read.failure);
  const { href, host, name } = read.value;
  const blob = await rangedFile({
    ...{ host, isPage: false },
    ask: (from, to) => askRange(fetch, href, from, to),
    size: () => askSize(fetch, href),
  });
  return { name, blob, host };
}

/**
 * Where the rasters named, those in folders and VRTs named, and the side-car files beside them are, in the order of
 * {@link terrainFiles}.
 * @throws Refusal for a file that cannot be read
 */
export async function withSideCars(
  paths: readonly string[],
): Promise<{ readonly path: string; readonly bytes: number }[]> {
  const rasters = await rastersAt(paths);
  const named = new Set(rasters);
  for (const path of rasters) await sizeOf(path, "raster");
  for (const path of rasters) {
    for (const sideCar of await sideCarsOf(path)) named.add(sideCar);
  }
  return Promise.all(
    [...named].map(async (path) => ({ path, bytes: await sizeOf(path, "side-car") })),
  );
}

async function sideCarsOf(path: string): Promise<string[]> {
  const folder = dirname(path);
  const name = basename(path).toLowerCase();
  const stem = name.slice(0, name.length - extname(name).length);
  const wanted = new Set(SIDE_CAR_ENDINGS.flatMap(([ending]) => [stem + ending, name + ending]));
  const beside = await readdir(folder).catch(() => []);
  return beside.filter((each) => wanted.has(each.toLowerCase())).map((each) => join(folder, each));
}

/** Bytes of a file that can be read from any place. @throws Refusal for one that is missing, a folder or unreadable */
export async function sizeOf(path: string, expected: FileRole): Promise<number> {
  const found = await stat(path).catch((error: NodeJS.ErrnoException) => {
    throw unreadable(path, expected, error);
  });
  if (found.isDirectory()) throw refusal("file/is-folder", { path, expected });
  if (!found.isFile()) throw refusal("file/not-a-file", { path, expected });
  await access(path, constants.R_OK).catch((error: NodeJS.ErrnoException) => {
    throw unreadable(path, expected, error);
  });
  return found.size;
}

function unreadable(path: string, expected: FileRole, error: NodeJS.ErrnoException): Refusal {
  return error.code === "ENOENT" || error.code === "ENOTDIR"
    ? refusal("file/missing", { path, expected })
    : refusal("file/unreadable", { path, expected, cause: error.code ?? error.message });
}
