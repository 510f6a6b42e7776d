import { VRT_FAULTS, VRT_SOURCES } from "./file-faults.ts";
import { type Fault, firstFew, type Named } from "./raster.ts";
import type { RefusalTexts } from "./text.ts";

const VRT_AGAIN = "Make the VRT again from the files in a GIS, or open the files without it.";

/** Of a GDAL VRT and the files it names. */
export const VRT_REFUSALS = {
  "raster/vrt-kind": ({ name, has }: Named & { has: string }) => [
    `Expected a VRT that puts files side by side; "${name}" has ${has}, which is not read.`,
    "Write what it shows to a GeoTIFF in a GIS and open that, or open its files without it.",
  ],
  "raster/vrt-damaged": ({ name, fault, of = [] }: Fault<typeof VRT_FAULTS>) => [
    `Expected a GDAL VRT in "${name}"; ${VRT_FAULTS[fault](of)}.`,
    "Make it again in a GIS, or open its files without it.",
  ],
  "raster/vrt-too-large": ({
    name,
    bytes,
    mostBytes,
  }: Named & { bytes: number; mostBytes: number }) => [
    `Expected a GDAL VRT of at most ${megabytes(mostBytes)} MB; "${name}" has ${megabytes(bytes)} MB.`,
    "Open its files without it.",
  ],
  "raster/vrt-source": ({ name, fault, of = [] }: Fault<typeof VRT_SOURCES>) => [
    `Expected plain raster files in "${name}"; it names ${VRT_SOURCES[fault](of)}.`,
    "Open the files themselves without the VRT.",
  ],
  "raster/vrt-missing": ({
    name,
    files,
    missing,
    atAddress,
  }: Named & { files: number; missing: readonly string[]; atAddress: boolean }) => [
    `Expected ${files === 1 ? "the file" : `all ${files} files`} that "${name}" names; not among the files: ${firstFew(missing)}.`,
    atAddress
      ? "Here the address of one file is read: open the address of the one at the site, or download the VRT and its files and open them together. The terminal program reads a VRT at an address with the files beside it."
      : "Open the VRT and its files together, or the folder that holds them.",
  ],
  "raster/vrt-place": ({ name, vrt, cells }: Named & { vrt: string; cells: number }) => [
    `Expected "${vrt}" and "${name}" to agree where that file lies; they are ${Number(cells.toPrecision(3))} of its cells apart.`,
    VRT_AGAIN,
  ],
  "raster/vrt-reference": ({
    name,
    vrt,
    has,
    vrtHas,
  }: Named & { vrt: string; has: string; vrtHas: string }) => [
    `Expected "${vrt}" and "${name}" in one coordinate reference; the one is in ${vrtHas}, the other in ${has}.`,
    VRT_AGAIN,
  ],
  "raster/vrt-unit": ({ name, vrt }: Named & { vrt: string }) => [
    `Expected "${vrt}" and "${name}" to state one unit of heights; they state two.`,
    "Look in the survey's metadata which is right, and open the files without the VRT.",
  ],
} satisfies RefusalTexts;

function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(0);
}
