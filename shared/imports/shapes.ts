import type { gpx, kml } from "@tmcw/togeojson";
import type { Feature, FeatureCollection } from "geojson";
import { Refusal } from "../failure.ts";
import { loadPart } from "../load-part.ts";
import { tooLarge } from "../plan-json.ts";

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
  if (text.length > MAX_SHAPE_CHARACTERS) {
    throw tooLarge("a KML or GPX file", text.length, MAX_SHAPE_CHARACTERS);
  }
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) throw withEntities();
  const xml = parsed(text, parse);
  const format = xml.documentElement?.nodeName.replace(/^.*:/, "").toLowerCase();
  if (format !== "kml" && format !== "gpx") throw otherFormat(format);
  const library = await loadPart(
    "the reader of KML and GPX files",
    () => import("@tmcw/togeojson"),
  );
  const features = [...(format === "kml" ? library.kml(xml) : library.gpx(xml)).features];
  const shapes = features.flatMap(withColumns);
  if (shapes.length === 0) throw none();
  return { type: "FeatureCollection", features: shapes };
}

function parsed(text: string, parse: (xml: string) => XmlDocument): XmlDocument {
  try {
    const xml = parse(text);
    if (xml.getElementsByTagName("parsererror").length === 0) return xml;
  } catch {
    throw notXml();
  }
  throw notXml();
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

function withEntities(): Refusal {
  return new Refusal(
    "shapes/entities",
    "Expected plain KML or GPX; the file defines entities of its own, which are not read.",
    "Save it again from a GIS as KML, GPX or GeoJSON.",
  );
}

function notXml(): Refusal {
  return new Refusal(
    "shapes/not-xml",
    "Expected KML or GPX, which are XML; the file is not well-formed XML.",
    "Check that it is whole.",
  );
}

function otherFormat(format: string | undefined): Refusal {
  return new Refusal(
    "shapes/other-format",
    `Expected KML or GPX; the file begins with <${(format ?? "").slice(0, 40)}>.`,
    "Save it from a GIS as GeoJSON, KML, GPX or a zipped shapefile.",
  );
}

function none(): Refusal {
  return new Refusal(
    "shapes/none",
    "Expected points, lines or polygons; the file has none.",
    "Check that the shapes themselves were saved, not a link to them.",
  );
}
