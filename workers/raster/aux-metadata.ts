import type { TerrainFile } from "../../shared/messages.ts";
import { readText } from "./read-bytes.ts";

/** More than this is statistics that are not needed, bytes. */
const MOST_BYTES = 1_048_576;

/** What an .aux.xml side-car adds to a raster, where the raster itself says nothing. */
export interface AuxMetadata {
  readonly noData: string | null;
  readonly scale: number | null;
  readonly offset: number | null;
  /** Unit of the heights as written. */
  readonly unit: string | null;
  /** Reference in well-known text. */
  readonly reference: string | null;
}

const NOTHING: AuxMetadata = {
  noData: null,
  scale: null,
  offset: null,
  unit: null,
  reference: null,
};

/** Reads GDAL's PAM side-car: its reference and its first band. Anything else in it is left alone. */
export async function auxMetadata(file: TerrainFile | null): Promise<AuxMetadata> {
  if (!file) return NOTHING;
  const xml = await readText(file, MOST_BYTES);
  const band =
    /<PAMRasterBand\b[^>]*\bband="1"[^>]*>([\s\S]*?)<\/PAMRasterBand>/.exec(xml)?.[1] ?? "";
  return {
    noData: textOf(band, "NoDataValue"),
    scale: numberOf(textOf(band, "Scale")),
    offset: numberOf(textOf(band, "Offset")),
    unit: textOf(band, "UnitType"),
    reference: textOf(xml, "SRS"),
  };
}

function textOf(xml: string, element: string): string | null {
  const text = new RegExp(`<${element}\\b[^>]*>([^<]*)</${element}>`).exec(xml)?.[1];
  return text === undefined ? null : unescaped(text).trim();
}

function unescaped(text: string): string {
  return text
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&");
}

/** The number that a text is; null for none. */
export function numberOf(text: string | null): number | null {
  const value = Number(text);
  return text === null || text === "" || !Number.isFinite(value) ? null : value;
}
