import type { ImageFileDirectory } from "geotiff";
import { damaged, truncated, unsupported } from "./blob-source.ts";
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
  if (!(columns >= 1 && rows >= 1)) throw damaged(name, `its size is ${columns} x ${rows} cells`);
  if (columns > MOST_SIDE || rows > MOST_SIDE) {
    throw damaged(name, `its size of ${columns} x ${rows} cells is absurd`);
  }
  if (!(samples >= 1)) throw damaged(name, "it has no band");

  const tiled = directory.hasTag("TileOffsets");
  const blockColumns = tiled ? number("TileWidth", 0) : columns;
  const blockRows = tiled
    ? number("TileLength", 0)
    : Math.min(rows, number("RowsPerStrip", rows) || rows);
  if (!(blockColumns >= 1 && blockRows >= 1)) throw damaged(name, "its tiles have no size");

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
    throw unsupported(
      name,
      "it is a color picture, not heights",
      "Open the elevation raster (a digital elevation model), not an air photo or a rendered map.",
    );
  }
  if (!(compression in CODECS)) throw unsupported(name, compressionName(compression));
  if (compression === LERC && layout.samples > 1) {
    throw unsupported(name, "it holds several bands in LERC");
  }
  if (compression === LERC && !layout.littleEndian) {
    throw unsupported(name, "it is compressed with LERC and written in big-endian order");
  }
  if (![1, 2, 3].includes(predictor)) throw damaged(name, `its predictor is ${predictor}`);
  if (sampleFormat === 5 || sampleFormat === 6)
    throw unsupported(name, "its cells are complex numbers");
  const floats = sampleFormat === 3 && (bits === 32 || bits === 64);
  const whole =
    (sampleFormat === 1 || sampleFormat === 2) && (bits === 8 || bits === 16 || bits === 32);
  const maskBits = layout.isMask && bits === 1;
  if (!floats && !whole && !maskBits) {
    throw unsupported(
      name,
      `its cells are ${bits}-bit numbers of sample format ${sampleFormat}`,
      "Write it again with 32-bit floating point numbers (Float32).",
    );
  }
  if (predictor === 3 && !floats)
    throw damaged(name, "it has a floating point predictor on whole numbers");
}

function compressionName(compression: number): string {
  const names = new Map([
    [6, "it is compressed with JPEG"],
    [7, "it is compressed with JPEG, which does not keep heights exact"],
    [34925, "it is compressed with LZMA"],
    [50001, "it is compressed with WebP"],
    [50002, "it is compressed with JPEG XL"],
    [34712, "it is compressed with JPEG 2000"],
  ]);
  return names.get(compression) ?? `its compression is number ${compression}`;
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
    throw damaged(name, `it should list ${blocks} blocks of cells and lists ${offsets.length}`);
  }
  const perPixel = layout.planar ? 1 : layout.samples;
  const rowBytes =
    layout.compression === 1 ? Math.ceil((blockColumns * perPixel * layout.bits) / 8) : 0;
  const down = Math.ceil(rows / blockRows);
  for (let i = 0; i < blocks; i++) {
    const bytes = Number(byteCounts[i]);
    const offset = Number(offsets[i]);
    if (!isCount(offset) || !isCount(bytes)) {
      throw damaged(name, "the places of its cells in the file are not whole numbers");
    }
    if (offset + bytes > fileBytes) throw truncated(name);
    const rowsHere = layout.tiled ? blockRows : Math.min(blockRows, rows - (i % down) * blockRows);
    if (bytes > 0 && bytes < rowsHere * rowBytes) {
      throw damaged(name, "a block of its cells is too short");
    }
  }
  const decodedWhole = layout.compression !== 1 || layout.tiled;
  if (decodedWhole && blockColumns * blockRows * perPixel > MOST_BLOCK_CELLS) {
    throw unsupported(
      name,
      `its cells are compressed in pieces of ${blockColumns} x ${blockRows}, too large to decode at once`,
      "Write it again with tiles, for instance as a Cloud Optimized GeoTIFF.",
    );
  }
}
