import type { HeaderMeta } from "flatgeobuf/lib/mjs/header-meta.js";
import type { Feature } from "geojson";
import { refusal } from "../failure.ts";
import { loadPart } from "../load-part.ts";
import type { ReadFeatures } from "./found-shapes.ts";
import { statedReference } from "./stated-reference.ts";

/** The first bytes of a FlatGeobuf file. */
export const FLATGEOBUF_START = [0x66, 0x67, 0x62];
/** What the header calls the coordinates in a refusal and in the reference. */
const FILE = "the FlatGeobuf file";

/**
 * The features of a FlatGeobuf file (versions 3 and later), with all their columns.
 * @throws Refusal `shapes/flatgeobuf-damaged`, `shapes/no-reference`, `program/part-missing`
 */
export async function readFlatGeobuf(bytes: Uint8Array): Promise<ReadFeatures> {
  const { deserialize } = await loadPart(
    "the reader of FlatGeobuf files",
    () => import("flatgeobuf/lib/mjs/geojson.js"),
  );
  const features: Feature[] = [];
  const headers: HeaderMeta[] = [];
  try {
    if (!hasWholeHeader(bytes)) throw refusal("shapes/flatgeobuf-damaged");
    const headerMetaFn = (header: HeaderMeta) => {
      const { indexNodeSize, featuresCount } = header;
      // the size of an index of nothing, or of nodes of one, is counted without an end
      if (indexNodeSize > 0 && (indexNodeSize < 2 || featuresCount === 0))
        throw refusal("shapes/flatgeobuf-damaged");
      headers.push(header);
    };
    for await (const feature of deserialize(bytes, { headerMetaFn })) {
      const { geometry, properties } = feature as Feature;
      features.push({ type: "Feature", geometry, properties });
    }
  } catch {
    throw refusal("shapes/flatgeobuf-damaged");
  }
  const [header] = headers;
  if (!header) throw refusal("shapes/flatgeobuf-damaged");
  const stated = Number(header.featuresCount);
  if (stated > 0 && stated !== features.length) throw refusal("shapes/flatgeobuf-damaged");
  const { org = null, code = 0, wkt = null } = header.crs ?? {};
  const reference = statedReference(FILE, { authority: org, code: code || null, text: wkt });
  if (!reference) throw refusal("shapes/no-reference", { format: "flatgeobuf" });
  return { value: { type: "FeatureCollection", features }, reference };
}

/** Source: FlatGeobuf specification: eight magic bytes, then the length of the header. */
function hasWholeHeader({ buffer, byteOffset, byteLength }: Uint8Array): boolean {
  if (byteLength < 12) return false;
  return new DataView(buffer, byteOffset).getUint32(8, true) + 12 <= byteLength;
}
