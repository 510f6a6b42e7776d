import { GeoTIFF, type ImageFileDirectory } from "geotiff";
import { Refusal, refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import { blobSource, damaged } from "./blob-source.ts";

/** More images than this in one file are not overviews and masks of a raster. */
const MOST_DIRECTORIES = 256;

export interface Directories {
  readonly littleEndian: boolean;
  readonly images: readonly ImageFileDirectory[];
}

/**
 * Reads all image directories of a TIFF, with every list they hold.
 * @throws Refusal when the chain of directories loops, breaks off or is absurdly long
 */
export async function readDirectories(file: TerrainFile): Promise<Directories> {
  try {
    return await walk(file);
  } catch (thrown) {
    if (thrown instanceof Refusal) throw thrown;
    if (thrown instanceof RangeError) throw refusal("raster/truncated", { name: file.name });
    const reason = thrown instanceof Error ? thrown.message : String(thrown);
    throw damaged(file.name, "directory", reason);
  }
}

async function walk(file: TerrainFile): Promise<Directories> {
  const tiff = await GeoTIFF.fromSource(blobSource(file));
  // Lists that geotiff.js defers are read as little-endian whatever the file says, a known fault of it.
  tiff.parser.eager = true;
  const images: ImageFileDirectory[] = [];
  const seen = new Set<number>();
  let offset = tiff.firstIFDOffset;
  while (offset !== 0) {
    if (seen.has(offset)) throw damaged(file.name, "loop");
    if (seen.size >= MOST_DIRECTORIES) throw damaged(file.name, "too-many-images");
    seen.add(offset);
    const directory = await tiff.parser.parseFileDirectoryAt(offset);
    images.push(directory);
    offset = directory.nextIFDByteOffset;
  }
  if (images.length === 0) throw damaged(file.name, "no-image");
  return { littleEndian: tiff.littleEndian, images };
}
