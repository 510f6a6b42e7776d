import { type Outcome, refusal, refused } from "../failure.ts";
import { parseBounded } from "../plan-json.ts";
import { addTexts } from "../words/failure.ts";
import { IMPORT_READING_REFUSALS } from "../words/refusals/import-reading.ts";
import { unpack } from "./archive.ts";
import { FLATGEOBUF_START, readFlatGeobuf } from "./flatgeobuf.ts";
import {
  foundShapes,
  type ReadFeatures,
  type ShapeFile,
  type ShapeOptions,
} from "./found-shapes.ts";
import { PARQUET_START, readGeoParquet } from "./geoparquet.ts";
import { MAX_SHAPE_BYTES } from "./shape-files.ts";
import { readShapefile } from "./shapefile.ts";
import { readShapes, type XmlDocument } from "./shapes.ts";

const EXPECTED = { file: "shapes", maxCharacters: MAX_SHAPE_BYTES } as const;
const ZIP = [0x50, 0x4b];

/**
 * The outlines and paths of a file: GeoJSON, KML, GPX, FlatGeobuf, GeoParquet, or a zip archive with a KML
 * (KMZ) or one shapefile. Failures: those of `parseBounded`, `readShapes`, `readFlatGeobuf`, `readGeoParquet`,
 * `unpack`, `readShapefile` and `foundShapes`; `shapes/none`.
 * @param parse makes a document of XML text
 */
export async function readShapeFile(
  bytes: Uint8Array,
  parse: (xml: string) => XmlDocument,
  options: ShapeOptions = {},
): Promise<Outcome<ShapeFile>> {
  addTexts(IMPORT_READING_REFUSALS);
  try {
    const file = await read(bytes, parse, options);
    if (file.outlines.length + file.paths.length === 0) {
      throw refusal("shapes/none", { in: "file", others: file.others });
    }
    return { ok: true, value: file };
  } catch (thrown) {
    return refused(thrown);
  }
}

/** The outlines and paths of GeoJSON text. @throws Refusal as of `parseBounded` and `foundShapes` */
export function geoJsonShapes(text: string): ShapeFile {
  return foundShapes(parseBounded(text, EXPECTED));
}

async function read(
  bytes: Uint8Array,
  parse: (xml: string) => XmlDocument,
  options: ShapeOptions,
): Promise<ShapeFile> {
  const { length: came } = bytes;
  if (came > MAX_SHAPE_BYTES) {
    throw refusal("plan/too-large", { file: "shapes", came, most: MAX_SHAPE_BYTES });
  }
  const startsWith = (start: readonly number[]) => start.every((byte, i) => bytes[i] === byte);
  const shapesOf = ({ value, reference }: ReadFeatures) => foundShapes(value, reference, options);
  if (startsWith(FLATGEOBUF_START)) return shapesOf(await readFlatGeobuf(bytes));
  if (startsWith(PARQUET_START)) return shapesOf(await readGeoParquet(bytes));
  if (!startsWith(ZIP)) return readText(bytes, parse, options);
  const files = await unpack(bytes);
  const names = [...files.keys()];
  const kml = names.find((name) => name.endsWith(".kml"));
  if (kml !== undefined && !names.some((name) => name.endsWith(".shp"))) {
    return readText(files.get(kml)!, parse, options);
  }
  return shapesOf(await readShapefile(files));
}

async function readText(
  bytes: Uint8Array,
  parse: (xml: string) => XmlDocument,
  options: ShapeOptions,
): Promise<ShapeFile> {
  const text = new TextDecoder().decode(bytes);
  if (!/^\s*</.test(text)) return foundShapes(parseBounded(text, EXPECTED), null, options);
  return foundShapes(await readShapes(text, parse), { kind: "degrees" }, options);
}
