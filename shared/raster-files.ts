import { refusal } from "./failure.ts";

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

const RASTER_ENDINGS = [".tif", ".tiff", ".gtiff", ".asc", ".grd", ".txt", ".vrt"];
/** Endings that in a folder are mostly of other files: named alone they are tried. */
const NOT_IN_FOLDERS = [".txt"];

/** For a file dialog: rasters and all that may accompany them. */
export const GROUND_FILES: string = [
  ...RASTER_ENDINGS,
  ...SIDE_CAR_ENDINGS.map(([ending]) => ending.replace(".aux", "")),
].join(",");

/** Most files of a folder that are looked at, and how deep it is searched. */
export const FOLDER_LIMITS = { files: 5000, depth: 8 } as const;

/** Whether a file of a folder is taken for elevation data, or for a file beside it, by its name. */
export function isGroundName(name: string): boolean {
  const lower = name.toLowerCase();
  const rasters = RASTER_ENDINGS.filter((ending) => !NOT_IN_FOLDERS.includes(ending));
  const endings = [...rasters, ...SIDE_CAR_ENDINGS.map(([ending]) => ending)];
  return !lower.startsWith(".") && endings.some((ending) => lower.endsWith(ending));
}

/** @throws Refusal always: a folder without elevation data, or with too many files */
export function refuseFolder(name: string, files: number): never {
  const most = files > 0 ? FOLDER_LIMITS.files : null;
  throw refusal("file/directory", { folder: name.slice(0, 200), most });
}
