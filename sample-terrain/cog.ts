import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import openGdal from "gdal3.js/node.js";

export interface Grid {
  /** Rows from the north, columns from the west, metres; NaN where there is no data. */
  readonly heightsM: Float32Array;
  readonly columns: number;
  /** Lower left corner of the lower left cell in EPSG:26915, metres; cells are 1 m. */
  readonly corner: readonly [number, number];
  /** Name of the invented vertical datum, written into the file. */
  readonly datum: string;
}

const NO_DATA = -9999;
const PACKAGE = "node_modules/gdal3.js/dist/package";

/**
 * The grid as a cloud optimised GeoTIFF (deflate, floating-point predictor, 256-cell tiles, averaged
 * overviews), heights in metres by the file's own keys.
 */
export async function writeCog(path: string, grid: Grid): Promise<void> {
  const rows = grid.heightsM.length / grid.columns;
  const folder = mkdtempSync(join(tmpdir(), "drystead-"));
  const raw = join(folder, "grid.bil");
  const stored = grid.heightsM.map((height) => (Number.isNaN(height) ? NO_DATA : height));
  writeFileSync(raw, Buffer.from(stored.buffer));
  writeFileSync(join(folder, "grid.hdr"), header(grid, rows));
  const gdal = await openGdal({ path: relative(process.cwd(), PACKAGE), useWorker: false });
  const { datasets, errors } = await gdal.open([raw, join(folder, "grid.hdr")]);
  if (datasets.length === 0) throw new Error(`GDAL did not open the grid: ${errors.join("; ")}`);
  const made = await gdal.gdal_translate(datasets[0]!, options(grid.datum), "made");
  writeFileSync(path, await gdal.getFileBytes(made));
  await gdal.close(datasets[0]!);
  rmSync(folder, { recursive: true });
}

function header(grid: Grid, rows: number): string {
  const fields = {
    BYTEORDER: "I",
    LAYOUT: "BIL",
    NROWS: rows,
    NCOLS: grid.columns,
    NBANDS: 1,
    NBITS: 32,
    PIXELTYPE: "FLOAT",
    ULXMAP: grid.corner[0] + 0.5,
    ULYMAP: grid.corner[1] + rows - 0.5,
    XDIM: 1,
    YDIM: 1,
    NODATA: NO_DATA,
  };
  return Object.entries(fields)
    .map(([name, value]) => `${name} ${value}\n`)
    .join("");
}

function options(datum: string): string[] {
  const create = ["COMPRESS=DEFLATE", "PREDICTOR=FLOATING_POINT", "LEVEL=9", "BLOCKSIZE=256"];
  const more = ["OVERVIEW_RESAMPLING=AVERAGE", "GEOTIFF_VERSION=1.1"];
  return ["-of", "COG", "-a_srs", reference(datum)].concat(
    [...create, ...more].flatMap((option) => ["-co", option]),
  );
}

function reference(datum: string): string {
  return `COMPD_CS["NAD83 / UTM zone 15N + ${datum}",
    PROJCS["NAD83 / UTM zone 15N",
      GEOGCS["NAD83",
        DATUM["North_American_Datum_1983",
          SPHEROID["GRS 1980",6378137,298.257222101,AUTHORITY["EPSG","7019"]],
          AUTHORITY["EPSG","6269"]],
        PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433],AUTHORITY["EPSG","4269"]],
      PROJECTION["Transverse_Mercator"],
      PARAMETER["latitude_of_origin",0],PARAMETER["central_meridian",-93],
      PARAMETER["scale_factor",0.9996],
      PARAMETER["false_easting",500000],PARAMETER["false_northing",0],
      UNIT["metre",1],AXIS["Easting",EAST],AXIS["Northing",NORTH],
      AUTHORITY["EPSG","26915"]],
    VERT_CS["${datum}",VERT_DATUM["${datum}",2005],UNIT["metre",1,AUTHORITY["EPSG","9001"]],AXIS["Up",UP]]]`;
}
