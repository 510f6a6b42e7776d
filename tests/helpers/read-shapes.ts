import { DOMParser } from "@xmldom/xmldom";
import { outcomeOf } from "../../shared/failure.ts";
import { geoJsonShapes, readShapeFile } from "../../shared/imports/read-shape-file.ts";

/** XML text as a document, by a parser that stands in for the browser's. */
export const parseXml = (xml: string) =>
  new DOMParser({ onError: () => {} }).parseFromString(xml, "text/xml");

/** The shapes of GeoJSON text, or why it was refused. */
export const readGeoJson = (text: string) => outcomeOf(() => geoJsonShapes(text));

/** The shapes of a file, or why it was refused. */
export const shapesIn = (file: Uint8Array | string) =>
  readShapeFile(typeof file === "string" ? new TextEncoder().encode(file) : file, parseXml);
