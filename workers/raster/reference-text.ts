import proj4 from "proj4";
import type { TerrainFile } from "../../shared/messages.ts";
import { noteOnDatum, shiftByName } from "./datum.ts";
import type { VerticalReference } from "./open-raster.ts";
import { readText } from "./read-bytes.ts";
import { type HorizontalReference, makeReference, refuseReference } from "./reference.ts";
import { unitByFactor, unsupportedUnit } from "./vertical.ts";
import { nameOf, partOf, unitOf } from "./well-known-text.ts";

/** A reference in well-known text is short; more than this is something else, bytes. */
const MOST_BYTES = 65_536;

const HORIZONTAL = ["PROJCS", "PROJCRS", "GEOGCS", "GEOGCRS", "GEODCRS"];
const VERTICAL = ["VERTCS", "VERT_CS", "VERTCRS"];

/** Both halves of what a .prj says. */
export interface TextReference {
  readonly horizontal: HorizontalReference;
  readonly vertical: VerticalReference;
}

/**
 * The reference that a .prj states in well-known text (WKT 1, as GIS write it, or WKT 2).
 * @throws Refusal `raster/crs-unknown` or `ground/unit-unsupported`
 */
export async function referenceFromFile(file: TerrainFile): Promise<TextReference> {
  return referenceFromText(file.name, await readText(file, MOST_BYTES));
}

/** The same from the text itself. */
export function referenceFromText(fileName: string, text: string): TextReference {
  const horizontal = partOf(text, HORIZONTAL);
  if (horizontal === null) {
    return refuseReference(fileName, "it is not in well-known text (PROJCS[...] or GEOGCS[...])");
  }
  return {
    horizontal: horizontalOf(fileName, horizontal),
    vertical: verticalOf(fileName, partOf(text, VERTICAL)),
  };
}

function horizontalOf(fileName: string, wkt: string): HorizontalReference {
  const label = labelOf(wkt);
  const shifted = withShift(fileName, label, wkt);
  const { a, datum } = projOf(fileName, label, shifted);
  const shift = datum.datum_params ?? null;
  return makeReference(fileName, label, shifted, noteOnDatum(shift, a, /WGS.?(19)?84/i.test(wkt)));
}

/** Adds the shift to WGS 84 where the text and proj4 leave it out and the datum is one that needs it. */
function withShift(fileName: string, label: string, wkt: string): string {
  const known = projOf(fileName, label, wkt).datum.datum_params;
  const shift = known ? null : shiftByName(wkt);
  const spheroid = partOf(wkt, ["SPHEROID"]);
  if (!shift || !spheroid) return wkt;
  const seven = Array.from({ length: 7 }, (_, i) => shift[i] ?? "0");
  return wkt.replace(spheroid, `${spheroid},TOWGS84[${seven.join(",")}]`);
}

interface ParsedProjection {
  readonly a: number;
  readonly datum: { readonly datum_params?: readonly number[] };
}

function projOf(fileName: string, label: string, wkt: string): ParsedProjection {
  try {
    return new proj4.Proj(wkt) as unknown as ParsedProjection;
  } catch {
    return refuseReference(fileName, label);
  }
}

function labelOf(wkt: string): string {
  const authority = /(?:AUTHORITY|ID)\s*\[\s*"EPSG"\s*,\s*"?(\d+)"?\s*\]\s*\]\s*$/i.exec(wkt);
  return authority ? `EPSG:${authority[1]}` : nameOf(wkt);
}

function verticalOf(fileName: string, wkt: string | null): VerticalReference {
  const unit = wkt === null ? null : unitOf(wkt);
  if (wkt === null || unit === null)
    return { unit: null, datum: wkt === null ? null : nameOf(wkt) };
  const known = unitByFactor(unit.factor);
  if (known === null) throw unsupportedUnit(fileName, `"${unit.name}"`);
  return { unit: known, datum: nameOf(wkt) };
}
