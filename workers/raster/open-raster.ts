import type { FileNote } from "../../shared/ground-notes.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import type { VerticalUnit } from "../../shared/plan.ts";
import type { Affine } from "./affine.ts";
import type { BlockStore } from "./block-store.ts";
import type { HorizontalReference } from "./reference.ts";
import type { Strays } from "./strays.ts";

/** One resolution of a raster, read by blocks. Heights are metres, NaN where there is no data. */
export interface RasterLevel {
  readonly columns: number;
  readonly rows: number;
  readonly blockColumns: number;
  readonly blockRows: number;
  /**
   * Cells of one block, row by row, `blockColumns` wide. The last row of blocks may be shorter than
   * `blockRows`, the last column is padded. Throws `Refusal` where the file is damaged.
   */
  readBlock(blockColumn: number, blockRow: number): Promise<Float32Array>;
}

/** What a file says about its heights. */
export interface VerticalReference {
  /** Null when the file states none. */
  readonly unit: VerticalUnit | null;
  readonly datum: string | null;
}

/** A raster file that has been recognised and checked, before it is known in which unit its heights are. */
export interface OpenRaster {
  readonly name: string;
  readonly bytes: number;
  /** As shown to the person, e.g. "Cloud Optimized GeoTIFF". */
  readonly format: string;
  readonly columns: number;
  readonly rows: number;
  readonly affine: Affine;
  readonly reference: HorizontalReference;
  readonly vertical: VerticalReference;
  /** Full resolution first, then overviews from fine to coarse. */
  levels(metresPerUnit: number, store: BlockStore): readonly RasterLevel[];
  /** What was read so far that no ground has and the file does not declare. */
  readonly strays: Strays;
  /** What the person should know. */
  readonly notes: readonly FileNote[];
}

/** Files that came with a raster and belong to it by name. */
export interface SideCars {
  /** Well-known text of the reference system (.prj). */
  readonly projection: TerrainFile | null;
  /** Six lines of placement (.tfw, .tifw, .wld). */
  readonly world: TerrainFile | null;
  /** Extra metadata (.aux.xml). */
  readonly metadata: TerrainFile | null;
  /** External overviews (.ovr). */
  readonly overviews: TerrainFile | null;
  /** External mask (.msk). */
  readonly mask: TerrainFile | null;
}

/** A format Drystead reads: adding one is a module and a line in `formats.ts`. */
export interface RasterFormat {
  readonly name: string;
  /** Told by the first bytes of the file, never by its name. */
  recognises(head: Uint8Array): boolean;
  /** @throws Refusal when the file is damaged or of a kind that is not read. */
  open(file: TerrainFile, sides: SideCars): Promise<OpenRaster>;
}
