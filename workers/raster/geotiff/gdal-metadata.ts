import type { ImageFileDirectory } from "geotiff";
import { tagValue } from "./tags.ts";

/** What GDAL's own tag says about the first band. */
export interface BandMetadata {
  readonly scale: number | null;
  readonly offset: number | null;
  /** Unit of the heights as written, e.g. "m" or "US survey foot". */
  readonly unit: string | null;
}

/** Reads GDAL_METADATA (tag 42112): items with a role and a sample number. */
export function bandMetadata(directory: ImageFileDirectory): BandMetadata {
  const text = tagValue(directory, "GDAL_METADATA");
  return bandItems(typeof text === "string" ? text : "");
}

function bandItems(xml: string): BandMetadata {
  const items = [...xml.matchAll(/<Item\b([^>]*)>([^<]*)<\/Item>/g)];
  const itemOf = (role: string): string | null => {
    const item = items.find(
      ([, attributes]) =>
        new RegExp(`\\brole="${role}"`).test(attributes!) && /\bsample="0"/.test(attributes!),
    );
    return item?.[2]?.trim() ?? null;
  };
  const number = (text: string | null): number | null => {
    const value = Number(text);
    return text === null || text === "" || !Number.isFinite(value) ? null : value;
  };
  return {
    scale: number(itemOf("scale")),
    offset: number(itemOf("offset")),
    unit: itemOf("unittype"),
  };
}
