import type { Refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import type { BlockStore } from "../block-store.ts";
import type { HeightRule } from "../heights.ts";
import { maskedLevel } from "../masked-level.ts";
import type { RasterLevel, SideCars } from "../open-raster.ts";
import { damaged } from "./blob-source.ts";
import { type Directories, readDirectories } from "./directories.ts";
import { type ImageLayout, imageLayout } from "./image-layout.ts";
import { heightLevel, maskLevel } from "./image-level.ts";

interface PlacedImage {
  readonly file: TerrainFile;
  readonly layout: ImageLayout;
}

/** The images of a raster: the full one first, then its overviews; masks apart. */
export interface ImagePyramid {
  readonly heights: readonly [PlacedImage, ...PlacedImage[]];
  readonly masks: readonly PlacedImage[];
  /** Full images beside the first one, which are not read. */
  readonly others: number;
}

/**
 * Sorts the images of a file and of its side-cars (.ovr, .msk) by what they are.
 * A mask tells itself by bit 4 of NewSubfileType, an overview by bit 1 (TIFF 6.0).
 * @throws Refusal when one of them cannot be read
 */
export async function imagePyramid(
  file: TerrainFile,
  directories: Directories,
  sides: SideCars,
): Promise<ImagePyramid> {
  const [full, ...inside] = layoutsOf(file, directories);
  if (!full || full.layout.isMask) throw damaged(file.name, "mask-first");
  const overviewFile = sides.overviews ? await imagesOf(sides.overviews) : [];
  const maskFile = sides.mask ? await imagesOf(sides.mask) : [];
  const reduced = [
    ...inside.filter(({ layout }) => layout.isReduced && !layout.isMask),
    ...overviewFile.filter(({ layout }) => !layout.isMask),
  ]
    .filter(({ layout }) => layout.columns < full.layout.columns)
    .sort((a, b) => b.layout.columns - a.layout.columns);
  const masks = [...inside, ...overviewFile].filter(({ layout }) => layout.isMask);
  if (masks.length + maskFile.length > 0 && ![...masks, ...maskFile].some(isSizeOf(full))) {
    throw otherSize(file.name);
  }
  const others = inside.filter(({ layout }) => !layout.isReduced && !layout.isMask).length;
  return { heights: [full, ...reduced], masks: [...masks, ...maskFile], others };
}

function isSizeOf({ layout }: { readonly layout: ImageLayout }) {
  return (other: PlacedImage) =>
    other.layout.columns === layout.columns && other.layout.rows === layout.rows;
}

/**
 * The mask in a side-car (.msk) as a level, for a raster of another format.
 * @throws Refusal when it cannot be read or is of another size
 */
export async function maskBeside(
  file: TerrainFile,
  size: { readonly columns: number; readonly rows: number },
): Promise<RasterLevel> {
  const images = await imagesOf(file);
  const mask = images.find(
    ({ layout }) => layout.columns === size.columns && layout.rows === size.rows,
  );
  if (!mask) throw otherSize(file.name);
  return maskLevel(file, mask.layout);
}

function otherSize(name: string): Refusal {
  return damaged(name, "mask-size");
}

async function imagesOf(file: TerrainFile): Promise<PlacedImage[]> {
  return layoutsOf(file, await readDirectories(file));
}

function layoutsOf(file: TerrainFile, { images, littleEndian }: Directories): PlacedImage[] {
  return images.map((directory) => ({
    file,
    layout: imageLayout(file.name, directory, littleEndian, file.blob.size),
  }));
}

/**
 * The images as levels of heights, each with the mask of its size. Where there are masks, an overview
 * without one is left out: it would show holes as ground. Strays are noted of the full image alone, because
 * an overview holds means.
 */
export function pyramidLevels(
  { heights, masks }: ImagePyramid,
  rule: HeightRule,
  store: BlockStore,
): RasterLevel[] {
  return heights.flatMap(({ file, layout }, i) => {
    const level = heightLevel(file, layout, i === 0 ? rule : { ...rule, strays: null });
    const mask = masks.find(isSizeOf({ layout }));
    if (mask) return [maskedLevel(level, maskLevel(mask.file, mask.layout), store)];
    return masks.length === 0 || i === 0 ? [level] : [];
  });
}
