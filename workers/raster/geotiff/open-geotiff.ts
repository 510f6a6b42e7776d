import type { ImageFileDirectory } from "geotiff";
import { refusal } from "../../../shared/failure.ts";
import type { FileNote } from "../../../shared/ground-notes.ts";
import { loadPart } from "../../../shared/load-part.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import type { Affine } from "../affine.ts";
import { type AuxMetadata, auxMetadata } from "../aux-metadata.ts";
import type { OpenRaster, RasterFormat, SideCars } from "../open-raster.ts";
import { readText } from "../read-bytes.ts";
import type { HorizontalReference } from "../reference.ts";
import { fileReference, textReference } from "../reference-beside.ts";
import type { TextReference } from "../reference-text.ts";
import { makeStrays } from "../strays.ts";
import { worldFilePlacement } from "../world-file.ts";
import { damaged } from "./blob-source.ts";
import { readDirectories } from "./directories.ts";
import { bandMetadata } from "./gdal-metadata.ts";
import { type ImagePyramid, imagePyramid, pyramidLevels } from "./image-pyramid.ts";
import { type KeyValues, statesReference } from "./keys.ts";
import { noDataOf } from "./no-data.ts";
import { heightScaleOf, placementOf, soundScale } from "./placement.ts";
import { tagValue } from "./tags.ts";
import { utmFromKeys } from "./utm-keys.ts";
import { statesVertical, verticalFromKeys } from "./vertical-keys.ts";

/** GeoTIFF, Cloud Optimized GeoTIFF and BigTIFF, of either byte order. */
export const geotiff: RasterFormat = { name: "GeoTIFF", recognises, open: openGeotiff };

function recognises(head: Uint8Array): boolean {
  const mark = String.fromCharCode(...head.subarray(0, 2));
  const version = mark === "II" ? head[2]! + 256 * head[3]! : 256 * head[2]! + head[3]!;
  return (mark === "II" || mark === "MM") && (version === 42 || version === 43);
}

async function openGeotiff(file: TerrainFile, sides: SideCars): Promise<OpenRaster> {
  const { name } = file;
  const directories = await readDirectories(file);
  const main = directories.images[0]!;
  const pyramid = await imagePyramid(file, directories, sides);
  const { layout } = pyramid.heights[0];
  const keys = keysOf(name, main);
  const placement = placementOf(name, main, keys.GTRasterTypeGeoKey === 2);
  const aux = await auxMetadata(sides.metadata);
  const markers = [tagValue(main, "GDAL_NODATA"), aux.noData];
  const rule = {
    noData: markers.flatMap((text) => noDataOf(name, layout, text) ?? []),
    strays: makeStrays(),
    ...scaleOf(name, main, keys, aux),
  };
  const beside = statesReference(keys) ? null : await referenceBeside(name, sides, aux);
  const own = await verticalFromKeys(name, keys, bandMetadata(main).unit ?? aux.unit);
  return {
    name,
    bytes: file.blob.size,
    format: await formatName(file, pyramid),
    columns: layout.columns,
    rows: layout.rows,
    affine: placement ?? (await sideCarPlacement(name, sides)),
    reference: beside?.horizontal ?? (await referenceOf(name, keys)),
    vertical: beside?.vertical.unit && own.unit === null ? beside.vertical : own,
    levels: (metresPerUnit, store) => pyramidLevels(pyramid, { ...rule, metresPerUnit }, store),
    strays: rule.strays,
    notes: notesOf(pyramid),
  };
}

async function referenceOf(name: string, keys: KeyValues): Promise<HorizontalReference> {
  const utm = utmFromKeys(name, keys);
  if (utm) return utm;
  const all = await loadPart("the list of map projections", () => import("./reference-keys.ts"));
  return all.referenceFromKeys(name, keys);
}

function keysOf(name: string, main: ImageFileDirectory): KeyValues {
  try {
    return (main.parseGeoKeyDirectory() ?? {}) as KeyValues;
  } catch {
    throw damaged(name, "geo-keys");
  }
}

/** GDAL's own tag says how numbers become heights, or the placement does, or the side-car. */
function scaleOf(name: string, main: ImageFileDirectory, keys: KeyValues, aux: AuxMetadata) {
  const band = bandMetadata(main);
  const scale = band.scale ?? aux.scale;
  const offset = band.offset ?? aux.offset;
  if (scale !== null || offset !== null) {
    return soundScale(name, { scale: scale ?? 1, offset: offset ?? 0 });
  }
  return statesVertical(keys) ? heightScaleOf(name, main) : { scale: 1, offset: 0 };
}

async function sideCarPlacement(name: string, sides: SideCars): Promise<Affine> {
  if (sides.world) return worldFilePlacement(sides.world);
  throw refusal("raster/no-place", { name });
}

/** The reference in the .prj, or that in the .aux.xml, for a file that states none. */
async function referenceBeside(
  name: string,
  sides: SideCars,
  aux: AuxMetadata,
): Promise<TextReference> {
  if (sides.projection) return fileReference(sides.projection);
  if (sides.metadata && aux.reference) return textReference(sides.metadata.name, aux.reference);
  throw refusal("raster/crs-missing", { name, isGrid: false });
}

async function formatName(file: TerrainFile, pyramid: ImagePyramid): Promise<string> {
  const head = await readText(file, 400);
  if (head.includes("LAYOUT=COG")) return "Cloud Optimized GeoTIFF";
  return pyramid.heights.length > 1 ? "GeoTIFF with overviews" : "GeoTIFF";
}

function notesOf(pyramid: ImagePyramid): FileNote[] {
  const { samples, alphaSample } = pyramid.heights[0].layout;
  const bands = alphaSample === null ? samples : samples - 1;
  const notes: FileNote[] = [];
  if (bands > 1) notes.push({ kind: "bands", bands, vrt: null });
  if (pyramid.others > 0) notes.push({ kind: "rasters", rasters: pyramid.others + 1 });
  return notes;
}
