import type { gpx, kml } from "@tmcw/togeojson";
import type { Feature, FeatureCollection } from "geojson";
import { refusal } from "../failure.ts";
import { loadPart } from "../load-part.ts";

/** A parsed XML document: of the browser's own parser, or of one that stands in for it. */
export type XmlDocument = Parameters<typeof kml>[0] & Parameters<typeof gpx>[0];

/** Most characters a file may have. */
const MAX_SHAPE_CHARACTERS = 20_000_000;

/**
 * Shapes of a KML or GPX text as GeoJSON, longitude before latitude, WGS 84, each with its columns, `name`
 * among them.
 * @param parse makes a document of XML text; what it throws, or a `parsererror` in it, means the text is not XML
 * @throws Refusal `plan/too-large`, `shapes/entities`, `shapes/not-xml`, `shapes/other-format`, `shapes/none`,
 * `program/part-missing`
 */
export async function readShapes(
  text: string,
  parse: (xml: string) => XmlDocument,
): Promise<FeatureCollection> {
  const { length: came } = text;
  if (came > MAX_SHAPE_CHARACTERS) {
    throw refusal("plan/too-large", { file: "kml-gpx", came, most: MAX_SHAPE_CHARACTERS });
  }
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) throw refusal("shapes/entities");
  const xml = parsed(text, parse);
  const format = xml.documentElement?.nodeName.replace(/^.*:/, "").toLowerCase();
  if (format !== "kml" && format !== "gpx") {
    throw refusal("shapes/other-format", { began: (format ?? "").slice(0, 40) });
  }
  const library = await loadPart(
    "the reader of KML and GPX files",
    () => import("@tmcw/togeojson"),
  );
  const features = [...(format === "kml" ? library.kml(xml) : library.gpx(xml)).features];
  const shapes = features.flatMap(withColumns);
  if (shapes.length === 0) throw refusal("shapes/none", { in: "kml-gpx" });
  return { type: "FeatureCollection", features: shapes };
}

function parsed(text: string, parse: (xml: string) => XmlDocument): XmlDocument {
  try {
    const xml = parse(text);
    if (xml.getElementsByTagName("parsererror").length === 0) return xml;
  } catch {
    throw refusal("shapes/not-xml");
  }
  throw refusal("shapes/not-xml");
}

/** How a KML draws a shape, which is no column of it. */
const STYLE = /^(style|stroke|fill|icon|label|visibility|@)/;

/** The shape with the columns that its file has for it: of KML its `ExtendedData` too. */
function withColumns({ id, geometry, properties }: Feature<Feature["geometry"] | null>): Feature[] {
  if (!geometry) return [];
  const columns = Object.entries(properties ?? {}).filter(
    ([name, value]) => !STYLE.test(name) && ["string", "number", "boolean"].includes(typeof value),
  );
  const own = id === undefined ? {} : { id };
  return [{ type: "Feature", ...own, geometry, properties: Object.fromEntries(columns) }];
}
