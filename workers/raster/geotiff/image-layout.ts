import type { ImageFileDirectory } from "geotiff";
import { type Given, type Refusal, refusal } from "../../../shared/failure.ts";
import { damaged } from "./blob-source.ts";
import { CODECS } from "./codecs.ts";
import { tagNumber, tagNumbers } from "./tags.ts";

/** Where the cells of one image of a TIFF lie and how they are written. Tags: TIFF 6.0. */
export interface ImageLayout {
  readonly columns: number;
  readonly rows: number;
  /** Cells of one tile, or of one strip. */
  readonly blockColumns: number;
  readonly blockRows: number;
  readonly tiled: boolean;
  readonly offsets: ArrayLike<number>;
  readonly byteCounts: ArrayLike<number>;
  readonly compression: number;
  readonly predictor: number;
  readonly bits: number;
  /** 1 unsigned, 2 signed, 3 floating point. */
  readonly sampleFormat: number;
  readonly samples: number;
  /** True when each band is stored apart. */
  readonly planar: boolean;
  /** Index of the band that says where data is (alpha), or null. */
  readonly alphaSample: number | null;
  readonly littleEndian: boolean;
  readonly isReduced: boolean;
  readonly isMask: boolean;
  readonly directory: ImageFileDirectory;
}

const LERC = 34887;
const MOST_SIDE = 4_000_000;
/** One tile or strip is decoded at once: at most 64 million cells. */
const MOST_BLOCK_CELLS = 64_000_000;

/**
 * Reads and checks what an image directory says. A directory that passes can be read without
 * allocating more than its file justifies.
 * @throws Refusal `raster/damaged`, `raster/truncated` or `raster/unsupported`
 */
export function imageLayout(
  name: string,
  directory: ImageFileDirectory,
  littleEndian: boolean,
  fileBytes: number,
): ImageLayout {
  const number = (tag: Tag, otherwise: number) => tagNumber(directory, tag, otherwise);
  const list = (tag: Tag) => tagNumbers(directory, tag);
  const columns = number("ImageWidth", 0);
  const rows = number("ImageLength", 0);
  const samples = number("SamplesPerPixel", 1);
  if (!(columns >= 1 && rows >= 1)) throw damaged(name, "size", columns, rows);
  if (columns > MOST_SIDE || rows > MOST_SIDE) {
    throw damaged(name, "absurd-size", columns, rows);
  }
  if (!(samples >= 1)) throw damaged(name, "no-band");

  const tiled = directory.hasTag("TileOffsets");
  const blockColumns = tiled ? number("TileWidth", 0) : columns;
  const blockRows = tiled
    ? number("TileLength", 0)
    : Math.min(rows, number("RowsPerStrip", rows) || rows);
  if (!(blockColumns >= 1 && blockRows >= 1)) throw damaged(name, "no-tile-size");

  const planar = number("PlanarConfiguration", 1) === 2;
  const newSubfileType = number("NewSubfileType", 0);
  const layout: ImageLayout = {
    columns,
    rows,
    blockColumns,
    blockRows,
    tiled,
    offsets: list(tiled ? "TileOffsets" : "StripOffsets"),
    byteCounts: list(tiled ? "TileByteCounts" : "StripByteCounts"),
    compression: number("Compression", 1),
    predictor: number("Predictor", 1),
    bits: number("BitsPerSample", 1),
    sampleFormat: number("SampleFormat", 1) === 4 ? 1 : number("SampleFormat", 1),
    samples,
    planar,
    alphaSample: alphaOf(list("ExtraSamples"), samples),
    littleEndian,
    isReduced: (newSubfileType & 1) !== 0,
    isMask: (newSubfileType & 4) !== 0,
    directory,
  };
  checkKind(name, layout, number("PhotometricInterpretation", 1));
  checkBlocks(name, layout, fileBytes);
  return layout;
}

type Tag = Parameters<typeof tagNumbers>[1];

/** Extra samples 1 and 2 are transparency (TIFF 6.0). */
function alphaOf(extraSamples: ArrayLike<number>, samples: number): number | null {
  const index = Array.from(extraSamples).findIndex((kind) => kind === 1 || kind === 2);
  return index < 0 ? null : samples - extraSamples.length + index;
}

function checkKind(name: string, layout: ImageLayout, photometric: number): void {
  const { bits, sampleFormat, compression, predictor } = layout;
  if (photometric === 2 || photometric === 3 || photometric === 5 || photometric === 6) {
    throw unread(name, "picture");
  }
  if (!(compression in CODECS)) throw unread(name, "compression", compression);
  if (compression === LERC && layout.samples > 1) {
    throw unread(name, "lerc-bands");
  }
  if (compression === LERC && !layout.littleEndian) {
    throw unread(name, "lerc-order");
  }
  if (![1, 2, 3].includes(predictor)) throw damaged(name, "predictor", predictor);
  if (sampleFormat === 5 || sampleFormat === 6) throw unread(name, "complex");
  const floats = sampleFormat === 3 && (bits === 32 || bits === 64);
  const whole =
    (sampleFormat === 1 || sampleFormat === 2) && (bits === 8 || bits === 16 || bits === 32);
  const maskBits = layout.isMask && bits === 1;
  if (!floats && !whole && !maskBits) {
    throw unread(name, "numbers", bits, sampleFormat);
  }
  if (predictor === 3 && !floats) throw damaged(name, "float-predictor");
}

function unread(
  name: string,
  fault: Given<"raster/unsupported">["fault"],
  ...of: readonly number[]
): Refusal {
  return refusal("raster/unsupported", { name, fault, of });
}

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0;
}

/** Every block must be listed, lie inside the file and be of a size that can be decoded. */
function checkBlocks(name: string, layout: ImageLayout, fileBytes: number): void {
  const { columns, rows, blockColumns, blockRows, offsets, byteCounts } = layout;
  const blocks =
    Math.ceil(columns / blockColumns) *
    Math.ceil(rows / blockRows) *
    (layout.planar ? layout.samples : 1);
  if (offsets.length < blocks || byteCounts.length < blocks) {
    throw damaged(name, "block-list", blocks, offsets.length);
  }
  const perPixel = layout.planar ? 1 : layout.samples;
  const rowBytes =
    layout.compression === 1 ? Math.ceil((blockColumns * perPixel * layout.bits) / 8) : 0;
  const down = Math.ceil(rows / blockRows);
  for (let i = 0; i < blocks; i++) {
    const bytes = Number(byteCounts[i]);
    const offset = Number(offsets[i]);
    if (!isCount(offset) || !isCount(bytes)) {
      throw damaged(name, "block-places");
    }
    if (offset + bytes > fileBytes) throw refusal("raster/truncated", { name });
    const rowsHere = layout.tiled ? blockRows : Math.min(blockRows, rows - (i % down) * blockRows);
    if (bytes > 0 && bytes < rowsHere * rowBytes) {
      throw damaged(name, "short-block");
    }
  }
  const decodedWhole = layout.compression !== 1 || layout.tiled;
  if (decodedWhole && blockColumns * blockRows * perPixel > MOST_BLOCK_CELLS) {
    throw unread(name, "large-pieces", blockColumns, blockRows);
  }
}
