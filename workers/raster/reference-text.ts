import "./all-projections.ts";
import { refusal } from "../../shared/failure.ts";
import { datumOf } from "./datum.ts";
import type { VerticalReference } from "./open-raster.ts";
import { type HorizontalReference, makeReference, refuseReference } from "./reference.ts";
import { unitByFactor } from "./vertical.ts";
import { nameOf, partOf, unitOf } from "./well-known-text.ts";

const HORIZONTAL = ["PROJCS", "PROJCRS", "GEOGCS", "GEOGCRS", "GEODCRS"];
const GEOGRAPHIC = ["GEOGCS", "BASEGEOGCRS", "BASEGEODCRS", "GEOGCRS", "GEODCRS"];
const VERTICAL = ["VERTCS", "VERT_CS", "VERTCRS"];

/** Both halves of what a .prj says. */
export interface TextReference {
  readonly horizontal: HorizontalReference;
  readonly vertical: VerticalReference;
}

/**
 * The reference that a .prj states in well-known text (WKT 1, as GIS write it, or WKT 2).
 * @throws Refusal `raster/crs-unknown`, `raster/datum-unknown` or `ground/unit-unsupported`
 */
export function referenceFromText(fileName: string, text: string): TextReference {
  const horizontal = partOf(text, HORIZONTAL);
  if (horizontal === null) {
    return refuseReference(fileName, null);
  }
  return {
    horizontal: horizontalOf(fileName, horizontal),
    vertical: verticalOf(fileName, partOf(text, VERTICAL)),
  };
}

/** Names of the methods that are computed from well-known text as PROJ does, without their punctuation. */
const METHODS = [
  ...["transversemercator", "gausskruger", "mercatorauxiliarysphere", "mercator", "mercator1sp"],
  ...["lambertconformalconic", "lambertconformalconic1sp", "lambertconformalconic2sp"],
  ...["albers", "albersconicequalarea", "lambertazimuthalequalarea", "polyconic"],
  ...["obliquestereographic", "doublestereographic", "cassini", "cassinisoldner"],
  ...["hotineobliquemercatorazimuthcenter"],
];

function horizontalOf(fileName: string, wkt: string): HorizontalReference {
  const label = labelOf(wkt);
  const geographic = partOf(wkt, GEOGRAPHIC) ?? wkt;
  if (!isComputed(wkt, geographic)) refuseReference(fileName, label);
  const datum = partOf(geographic, ["DATUM", "ENSEMBLE"]) ?? "";
  const shift = /TOWGS84\s*\[([^\]]*)\]/i.exec(datum)?.[1]?.split(",").map(Number) ?? null;
  const stated = datumOf(fileName, label, {
    geographic: codesOf(geographic),
    datums: codesOf(datum),
    names: [nameOf(geographic), nameOf(datum)],
    shift,
  });
  return makeReference(fileName, label, wkt, stated);
}

/**
 * Whether proj4 computes a text as PROJ does: a method of the list, degrees counted from Greenwich (it takes
 * no notice of grads and of other meridians), and no Mercator by a standard parallel.
 */
function isComputed(wkt: string, geographic: string): boolean {
  const meridian = partOf(geographic, ["PRIMEM"]) ?? "0";
  if (Number(/,\s*([-+.\deE]+)/.exec(meridian)?.[1] ?? 0) !== 0) return false;
  const angle = unitOf(geographic.replace(partOf(geographic, ["SPHEROID", "ELLIPSOID"]) ?? "", ""));
  if (angle && Math.abs(angle.factor - Math.PI / 180) > 1e-12) return false;
  if (wkt === geographic) return true;
  const method = nameOf(partOf(wkt, ["PROJECTION", "METHOD"]) ?? "");
  const simple = method.toLowerCase().replace(/[^a-z0-9]/g, "");
  if (!METHODS.includes(simple)) return false;
  const parallel = /"Standard_Parallel_1"\s*,\s*([-+.\deE]+)/i.exec(wkt)?.[1];
  return simple !== "mercator" || Number(parallel ?? 0) === 0;
}

function labelOf(wkt: string): string {
  const [code] = codesOf(wkt);
  return code === undefined ? nameOf(wkt) : `EPSG:${code}`;
}

/** The EPSG code that stands at the end of a part; none when it has none. */
function codesOf(part: string): number[] {
  const authority = /(?:AUTHORITY|ID)\s*\[\s*"EPSG"\s*,\s*"?(\d+)"?\s*\]\s*\]\s*$/i.exec(part);
  return authority ? [Number(authority[1])] : [];
}

function verticalOf(fileName: string, wkt: string | null): VerticalReference {
  const unit = wkt === null ? null : unitOf(wkt);
  if (wkt === null || unit === null)
    return { unit: null, datum: wkt === null ? null : nameOf(wkt) };
  const known = unitByFactor(unit.factor);
  if (known === null) throw refusal("ground/unit-unsupported", { name: fileName, unit: unit.name });
  return { unit: known, datum: nameOf(wkt) };
}
