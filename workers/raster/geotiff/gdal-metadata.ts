import type { ImageFileDirectory } from "geotiff";
import { numberOf } from "../aux-metadata.ts";
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
  return {
    scale: numberOf(itemOf("scale")),
    offset: numberOf(itemOf("offset")),
    unit: itemOf("unittype"),
  };
}
