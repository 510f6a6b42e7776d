import type { Feature, Geometry } from "geojson";
import type { Compressors, FileMetaData } from "hyparquet";
import { Refusal, refusal } from "../failure.ts";
import { loadPart } from "../load-part.ts";
import { type Entries, entriesOf } from "../plan-feature.ts";
import type { ReadFeatures, ShapeReference } from "./found-shapes.ts";
import { statedReference } from "./stated-reference.ts";

/** The first bytes of a Parquet file. */
export const PARQUET_START = [0x50, 0x41, 0x52, 0x31];
const FILE = "the GeoParquet file";
/** Most bytes that its columns may have unpacked. */
const MOST_BYTES = 300_000_000;
/** Ways of packing that are read. */
const PACKINGS = ["UNCOMPRESSED", "SNAPPY", "GZIP", "ZSTD"];

/**
 * The features of a GeoParquet file (OGC GeoParquet 1.0 and 1.1, geometry as well-known binary), with all their
 * columns.
 * @throws Refusal `shapes/parquet-damaged`, `shapes/parquet-packing`, `shapes/not-geoparquet`, `shapes/no-reference`,
 * `shapes/parquet-too-large`, `program/part-missing`
 */
export async function readGeoParquet(bytes: Uint8Array): Promise<ReadFeatures> {
  const library = await loadPart("the reader of GeoParquet files", () => import("hyparquet"));
  const file = Uint8Array.from(bytes).buffer;
  const metadata = orDamaged(() => library.parquetMetadata(file));
  refuseUnread(metadata);
  const { column, reference } = geometryOf(metadata);
  try {
    const compressors = await unpackersFor(metadata);
    const rows = await library.parquetReadObjects({ file, metadata, compressors });
    if (rows.length !== Number(metadata.num_rows)) throw refusal("shapes/parquet-damaged");
    const features = rows.map(
      ({ [column]: geometry, ...cells }): Feature => ({
        type: "Feature",
        geometry: (geometry ?? null) as Geometry,
        properties: plain(cells),
      }),
    );
    return { value: { type: "FeatureCollection", features }, reference };
  } catch (thrown) {
    if (thrown instanceof Refusal) throw thrown;
    throw refusal("shapes/parquet-damaged");
  }
}

function orDamaged<T>(work: () => T): T {
  try {
    return work();
  } catch {
    throw refusal("shapes/parquet-damaged");
  }
}

function refuseUnread({ row_groups }: FileMetaData): void {
  const chunks = row_groups.flatMap(({ columns }) => columns.map(({ meta_data }) => meta_data));
  const bytes = chunks.reduce((sum, chunk) => sum + Number(chunk?.total_uncompressed_size ?? 0), 0);
  if (bytes > MOST_BYTES) throw refusal("shapes/parquet-too-large", { mostBytes: MOST_BYTES });
  const other = chunks.find((chunk) => chunk && !PACKINGS.includes(chunk.codec));
  if (other) throw refusal("shapes/parquet-packing", { came: other.codec });
}

/** The column with the geometry, and in what it is. */
function geometryOf({ key_value_metadata }: FileMetaData): {
  readonly column: string;
  readonly reference: ShapeReference;
} {
  const text = key_value_metadata?.find(({ key }) => key === "geo")?.value;
  const geo = entriesOf(text === undefined ? null : orDamaged(() => JSON.parse(text)));
  const column = geo?.primary_column;
  const about = typeof column === "string" ? entriesOf(entriesOf(geo?.columns)?.[column]) : null;
  if (typeof column !== "string" || about?.encoding !== "WKB")
    throw refusal("shapes/not-geoparquet");
  const reference = "crs" in about ? referenceOf(about.crs) : { kind: "degrees" as const };
  if (!reference) throw refusal("shapes/no-reference", { format: "geoparquet" });
  return { column, reference };
}

/** What PROJJSON says; null where the file says that nobody knows, or names no code. */
function referenceOf(crs: unknown): ShapeReference | null {
  const id = entriesOf(entriesOf(crs)?.id);
  const code = id?.code;
  const isCode = typeof code === "number" || typeof code === "string";
  const authority = typeof id?.authority === "string" ? id.authority : null;
  return statedReference(FILE, { authority, code: isCode ? code : null, text: null });
}

async function unpackersFor({ row_groups }: FileMetaData): Promise<Compressors> {
  const used = new Set(
    row_groups.flatMap(({ columns }) => columns.map(({ meta_data }) => meta_data?.codec)),
  );
  const unpackers: Compressors = {};
  if (used.has("GZIP")) {
    const { gunzipSync } = await loadPart("the reader of zip files", () => import("fflate"));
    unpackers.GZIP = (packed, size) => gunzipSync(packed, { out: new Uint8Array(size) });
  }
  if (used.has("ZSTD")) {
    const { ZSTDDecoder } = await loadPart("the reader of Zstandard", () => import("zstddec"));
    const decoder = new ZSTDDecoder();
    await decoder.init();
    unpackers.ZSTD = (packed, size) => decoder.decode(packed, size);
  }
  return unpackers;
}

/** Cells as GeoJSON has them: whole numbers as numbers where they fit, times as text. */
function plain(cells: Entries): Entries {
  return Object.fromEntries(
    Object.entries(cells).map(([name, cell]) => {
      if (typeof cell === "bigint") {
        const figure = Number(cell);
        return [name, Number.isSafeInteger(figure) ? figure : String(cell)];
      }
      return [name, cell instanceof Date ? cell.toISOString() : cell];
    }),
  );
}
