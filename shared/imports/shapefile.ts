import type { Feature } from "geojson";
import { refusal } from "../failure.ts";
import { loadPart } from "../load-part.ts";
import type { Unpacked } from "./archive.ts";
import type { ReadFeatures } from "./found-shapes.ts";

/** Source: ESRI Shapefile Technical Description, 1998: header, record header, parts of polylines and polygons. */
const HEADER_BYTES = 100;
const RECORD_HEADER_BYTES = 8;
const MAGIC = 9994;
const WITH_PARTS = [3, 5, 13, 15, 23, 25];
const PARTS_AT = 36;
/** Most parts of one shape: pairing holes with outlines takes their product. */
const MOST_PARTS = 5000;
/** Source: dBASE table file format: records, length of the header, length of a record. */
const DBF_HEADER_BYTES = 32;

/**
 * The one shapefile of an archive; without its .dbf the shapes have no columns.
 * @throws Refusal `shapes/none`, `shapes/several`, `shapes/no-reference`, `shapes/shapefile-damaged`,
 * `program/part-missing`
 */
export async function readShapefile(files: Unpacked): Promise<ReadFeatures> {
  const names = [...files.keys()].filter((name) => name.endsWith(".shp"));
  const [name] = names;
  if (name === undefined) throw refusal("shapes/none", { in: "zip" });
  const count = names.length;
  if (count > 1) throw refusal("shapes/several", { count, names: names.slice(0, 5) });
  const stem = name.slice(0, -".shp".length);
  const prj = files.get(`${stem}.prj`);
  if (!prj) throw refusal("shapes/no-reference", { format: "shapefile", name });
  const library = await loadPart("the reader of shapefiles", () => import("shpjs"));
  const [shp, dbf, cpg] = [files.get(name)!, files.get(`${stem}.dbf`), files.get(`${stem}.cpg`)];
  try {
    proveShapes(viewOf(shp));
    const shapes = library.parseShp(exact(shp));
    const rows = dbf ? library.parseDbf(exact(proven(dbf)), exact(cpg ?? new Uint8Array())) : [];
    const features = shapes.map(
      (geometry, i): Feature => ({ type: "Feature", geometry, properties: columns(rows[i] ?? {}) }),
    );
    const text = new TextDecoder().decode(prj);
    return {
      value: { type: "FeatureCollection", features },
      reference: { kind: "text", fileName: `${stem}.prj`, text },
    };
  } catch {
    throw refusal("shapes/shapefile-damaged", { name });
  }
}

/** @throws where a record of the .shp lies outside its file or has more parts than are read */
function proveShapes(view: DataView): void {
  if (view.getInt32(0) !== MAGIC) throw new RangeError("no shapefile");
  const end = view.getInt32(24) * 2;
  if (end > view.byteLength) throw new RangeError("cut off");
  let at = HEADER_BYTES;
  while (at < end) {
    const bytes = view.getInt32(at + 4) * 2;
    const next = at + RECORD_HEADER_BYTES + bytes;
    if (bytes < 4 || next > end) throw new RangeError("record outside the file");
    const type = view.getInt32(at + RECORD_HEADER_BYTES, true);
    const hasParts = WITH_PARTS.includes(type);
    const parts = hasParts ? view.getInt32(at + RECORD_HEADER_BYTES + PARTS_AT, true) : 0;
    if (parts < 0 || parts > MOST_PARTS) throw new RangeError("too many parts");
    at = next;
  }
}

/** The same bytes. @throws where the .dbf states more records than it has */
function proven(dbf: Uint8Array): Uint8Array {
  const view = viewOf(dbf);
  const [records, header, bytes] = [
    view.getUint32(4, true),
    view.getUint16(8, true),
    view.getUint16(10, true),
  ];
  const isWhole = header > DBF_HEADER_BYTES && bytes > 0 && header + records * bytes <= dbf.length;
  if (!isWhole) throw new RangeError("table cut off");
  return dbf;
}

/** Cells of a row; empty figures are left out. */
function columns(row: object): Feature["properties"] {
  return Object.fromEntries(
    Object.entries(row).filter(([, value]) => value !== "" && !Number.isNaN(value)),
  );
}

function viewOf({ buffer, byteOffset, byteLength }: Uint8Array): DataView {
  return new DataView(buffer, byteOffset, byteLength);
}

/** Bytes that begin at the start of their own buffer, as the reader takes them. */
function exact(bytes: Uint8Array): ArrayBuffer {
  return Uint8Array.from(bytes).buffer;
}
