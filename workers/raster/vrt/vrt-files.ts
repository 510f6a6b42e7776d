import { type Refusal, refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import { readText } from "../read-bytes.ts";
import type { RasterWithSides } from "../sort-files.ts";
import { isVrt } from "../wanted-rasters.ts";
import { readVrtText, type VrtSource, type VrtText } from "./vrt-text.ts";

/** More text than this lists no plan's ground, bytes. */
const MOST_BYTES = 32_000_000;

/** How a VRT uses a file. */
export interface VrtUse {
  readonly vrt: string;
  readonly text: VrtText;
  readonly source: VrtSource;
}

/** A raster to open, and the VRT that names it, if one does. */
export type WantedRaster = RasterWithSides & { readonly use: VrtUse | null };

/** @throws Refusal of a VRT that is not of simple sources, or too large */
export async function readVrt(file: TerrainFile): Promise<VrtText> {
  if (file.blob.size > MOST_BYTES) {
    throw refusal("raster/vrt-too-large", {
      ...{ name: file.name, bytes: file.blob.size, mostBytes: MOST_BYTES },
    });
  }
  return readVrtText(file.name, await readText(file, MOST_BYTES));
}

/** The end of a path, of either kind of slash. */
function fileNameOf(path: string): string {
  return path.split(/[\\/]/).at(-1)!;
}

/**
 * The rasters that the VRTs among them name. A VRT only chooses among the files that came with it, by their names;
 * nothing else is read, whatever folder it speaks of.
 * @returns the rasters, in the order in which they count where they overlap, and those that no VRT names
 * @throws Refusal `raster/vrt-missing`, or as of {@link readVrt}
 */
export async function namedByVrts(
  found: readonly RasterWithSides[],
): Promise<{ readonly wanted: readonly WantedRaster[]; readonly unnamed: readonly string[] }> {
  const vrts = found.filter(({ file }) => isVrt(file.name));
  const rasters = found.filter(({ file }) => !isVrt(file.name));
  const byName = new Map(rasters.map((each) => [each.file.name.toLowerCase(), each]));
  const wanted: WantedRaster[] = [];
  for (const { file } of vrts) {
    const text = await readVrt(file);
    const inOrder = text.sources.toReversed();
    const nameOf = ({ path }: VrtSource) => fileNameOf(path);
    const missing = inOrder.filter((each) => !byName.has(nameOf(each).toLowerCase()));
    if (missing.length > 0) throw missingFrom(file, text, missing.map(nameOf).toReversed());
    for (const source of inOrder) {
      const raster = byName.get(nameOf(source).toLowerCase())!;
      wanted.push({
        ...withReference(raster, file.name, text),
        use: { vrt: file.name, text, source },
      });
    }
  }
  const named = new Set(wanted.map(({ file }) => file));
  const unnamed = rasters.filter(({ file }) => !named.has(file)).map(({ file }) => file.name);
  return { wanted, unnamed };
}

/** A raster that has no reference of its own, nor beside it, is in that of the VRT. */
function withReference(
  raster: RasterWithSides,
  vrt: string,
  { reference }: VrtText,
): RasterWithSides {
  if (reference === null || raster.sides.projection) return raster;
  const projection = { name: vrt, blob: new Blob([reference]) };
  return { ...raster, sides: { ...raster.sides, projection } };
}

function missingFrom(
  { name: vrt, host }: TerrainFile,
  { sources }: VrtText,
  missing: readonly string[],
): Refusal {
  return refusal("raster/vrt-missing", {
    ...{ name: vrt, files: sources.length, missing, atAddress: host !== undefined },
  });
}
