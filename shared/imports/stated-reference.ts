import type { ShapeReference } from "./found-shapes.ts";

/** What a file states of its reference system: a code of an authority, well-known text, or both. */
interface StatedReference {
  readonly authority: string | null;
  readonly code: number | string | null;
  readonly text: string | null;
}

/** Longitude and latitude on WGS 84, whichever axis the authority names first: both formats have longitude first. */
const DEGREES = ["EPSG:4326", "OGC:CRS84", "EPSG:4979", "OGC:CRS84H"];

/** The reference of a file, by its code of EPSG's where it has one: that leaves nothing open; null where it states none that can be followed. */
export function statedReference(
  fileName: string,
  { authority, code, text }: StatedReference,
): ShapeReference | null {
  const name = code === null ? null : `${(authority ?? "EPSG").toUpperCase()}:${code}`;
  if (name !== null && DEGREES.includes(name.toUpperCase())) return { kind: "degrees" };
  const epsg = /^EPSG:(\d+)$/.exec(name ?? "")?.[1];
  if (epsg !== undefined) return { kind: "code", fileName, epsg: Number(epsg) };
  return text !== null && text.trim() !== "" ? { kind: "text", fileName, text } : null;
}
