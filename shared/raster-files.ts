/** What a file that accompanies a raster holds. */
export type SideCarKind = "metadata" | "projection" | "world" | "overviews" | "mask";

/** Endings of the files that accompany a raster, by what they hold. Terminal, page and reader share them. */
export const SIDE_CAR_ENDINGS: readonly (readonly [string, SideCarKind])[] = [
  [".aux.xml", "metadata"],
  [".prj", "projection"],
  [".tfw", "world"],
  [".tifw", "world"],
  [".tiffw", "world"],
  [".wld", "world"],
  [".asw", "world"],
  [".ovr", "overviews"],
  [".msk", "mask"],
];

const RASTER_ENDINGS = [".tif", ".tiff", ".gtiff", ".asc", ".grd", ".txt"];

/** For a file dialog: rasters and all that may accompany them. */
export const GROUND_FILES: string = [
  ...RASTER_ENDINGS,
  ...SIDE_CAR_ENDINGS.map(([ending]) => ending.replace(".aux", "")),
].join(",");
