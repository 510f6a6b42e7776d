import type { VerticalUnit } from "./plan.ts";

/** How several files of elevation data lie to each other, by their names. */
export interface TilesTogether {
  readonly finest: readonly string[];
  /** With larger cells than the finest. */
  readonly coarser: readonly string[];
  /** With cells as large as the finest, beside their grid by a part of a cell. */
  readonly offGrid: readonly string[];
  readonly overlap: boolean;
}

/** What the person should know of one file. */
export type FileNote =
  /** Heights are read from the first of its bands; they are the bands of `vrt` where that is set. */
  | { readonly kind: "bands"; readonly bands: number; readonly vrt: string | null }
  /** Only the first of its rasters is read. */
  | { readonly kind: "rasters"; readonly rasters: number }
  /** It states another unit of heights than the one chosen. */
  | { readonly kind: "unit-stated"; readonly stated: VerticalUnit; readonly chosen: VerticalUnit }
  /** Values that no ground can have and it does not declare. */
  | { readonly kind: "strays"; readonly values: readonly number[] };

/** What the person should know of elevation data that is open. */
export type GroundNote =
  | { readonly kind: "of-files"; readonly note: FileNote; readonly names: readonly string[] }
  /** A VRT says which files count; `unnamed` are those it does not name. */
  | { readonly kind: "vrt"; readonly vrt: string; readonly unnamed: readonly string[] }
  | ({ readonly kind: "tiles" } & TilesTogether)
  /** A file beside the rasters that belongs to none of them. */
  | { readonly kind: "loose"; readonly name: string };
