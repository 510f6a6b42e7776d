type Figures = readonly (string | number)[];

/** What is wrong with a file, said with figures or names where `of` has them. */
type FaultTexts = Readonly<Record<string, (of: Figures) => string>>;

/** Parts of a TIFF that contradict each other: after "it is damaged:". */
export const TIFF_FAULTS = {
  directory: ([reason]) => `its directory cannot be read (${reason})`,
  loop: () => "its image directories form a loop",
  "too-many-images": () => "it holds too many images",
  "no-image": () => "it holds no image",
  "mask-first": () => "its first image is a mask",
  "mask-size": () => "the mask of its holes is of another size",
  packed: () => "a block of its cells cannot be decompressed",
  "short-block": () => "a block of its cells is too short",
  size: ([columns, rows]) => `its size is ${columns} x ${rows} cells`,
  "absurd-size": ([columns, rows]) => `its size of ${columns} x ${rows} cells is absurd`,
  "no-band": () => "it has no band",
  "no-tile-size": () => "its tiles have no size",
  predictor: ([predictor]) => `its predictor is ${predictor}`,
  "float-predictor": () => "it has a floating point predictor on whole numbers",
  "block-list": ([blocks, listed]) =>
    `it should list ${blocks} blocks of cells and lists ${listed}`,
  "block-places": () => "the places of its cells in the file are not whole numbers",
  "geo-keys": () => "its GeoKeys point to values that are not there",
} satisfies FaultTexts;

/** Kinds of TIFF that are not read: after "of a kind that is not read:". */
export const UNREAD_TIFFS = {
  picture: () => "it is a color picture, not heights",
  compression: ([compression]) =>
    COMPRESSIONS.get(Number(compression)) ?? `its compression is number ${compression}`,
  "lerc-bands": () => "it holds several bands in LERC",
  "lerc-order": () => "it is compressed with LERC and written in big-endian order",
  complex: () => "its cells are complex numbers",
  numbers: ([bits, format]) => `its cells are ${bits}-bit numbers of sample format ${format}`,
  "large-pieces": ([columns, rows]) =>
    `its cells are compressed in pieces of ${columns} x ${rows}, too large to decode at once`,
} satisfies FaultTexts;

const COMPRESSIONS: ReadonlyMap<number, string> = new Map([
  [6, "it is compressed with JPEG"],
  [7, "it is compressed with JPEG, which does not keep heights exact"],
  [34925, "it is compressed with LZMA"],
  [50001, "it is compressed with WebP"],
  [50002, "it is compressed with JPEG XL"],
  [34712, "it is compressed with JPEG 2000"],
]);

/** The head of an Esri ASCII grid. */
export const GRID_FAULTS = {
  missing: ([key]) => `it has no ${key}`,
  size: ([columns, rows]) => `its size is ${columns} x ${rows} cells`,
  cells: ([dx, dy]) => `its cells measure ${dx} x ${dy}`,
  place: () => "its origin or cell size is not a usable number",
  keyword: ([word]) => `"${word}" is not one of its keywords`,
  value: ([key, text]) => `its ${key} is "${text}"`,
} satisfies FaultTexts;

/** A GDAL VRT. */
export const VRT_FAULTS = {
  "no-band": () => "it has no first band",
  "no-file": () => "it names no file",
  "many-files": ([count]) => `it names ${count} files`,
  entities: () => "it has entities of its own, which are not read",
  "not-xml": () => "it is not well-formed XML, and may be cut off",
  "not-vrt": () => "it does not begin with VRTDataset",
  rectangle: ([element]) => `its ${element} is not four numbers`,
  transform: () => "its GeoTransform is not six numbers",
  size: ([key]) => `its ${key} is not a size`,
  number: ([element]) => `its ${element} is not a number`,
} satisfies FaultTexts;

/** What a VRT names in the place of a plain file. */
export const VRT_SOURCES = {
  nothing: () => "a source without a file name",
  elsewhere: ([path]) => `"${path}", no plain file`,
  nested: ([path]) => `"${path}", a VRT inside a VRT`,
  band: ([path, band]) => `band ${band} of "${path}"`,
} satisfies FaultTexts;

/** Files that are often taken for rasters: what each is, and what to do with it. */
export const OTHER_FILES = {
  neither: ["neither", "Convert the elevation raster to GeoTIFF and open that."],
  vrt: ["a GDAL VRT under another name", "Give it a name that ends in .vrt."],
  zip: ["a ZIP archive", "Unpack it and open the raster inside."],
  "empty-zip": ["an empty ZIP archive", "Download it again, unpack it and open the raster inside."],
  gzip: ["a gzip archive", "Unpack it and open the raster inside."],
  "7z": ["a 7-Zip archive", "Unpack it and open the raster inside."],
  las: ["a point cloud (LAS or LAZ)", "Make a ground raster (DTM) from it in a GIS and open that."],
  png: ["a PNG picture", "Open the elevation raster itself, not a picture of it."],
  jpeg: ["a JPEG picture", "Open the elevation raster itself, not a picture of it."],
  pdf: ["a PDF document", "Open the elevation raster itself, not a map of it."],
  hdf: ["an HDF5 file", "Convert it to GeoTIFF and open that."],
  netcdf: ["a netCDF file", "Convert it to GeoTIFF and open that."],
  imagine: ["an Erdas Imagine file", "Convert it to GeoTIFF and open that."],
  sqlite: ["a database (GeoPackage or MBTiles)", "Export the raster in it as GeoTIFF."],
  shapefile: [
    "a shapefile",
    "Open an elevation raster; lines and footprints are imported elsewhere.",
  ],
} as const satisfies Readonly<Record<string, readonly [what: string, remedy: string]>>;
