import { readFile, stat } from "node:fs/promises";
import { DOMParser } from "@xmldom/xmldom";
import { Refusal, refusal } from "../../shared/failure.ts";
import type { ShapeFile } from "../../shared/imports/found-shapes.ts";
import { cornersInTurn } from "../../shared/imports/place-shapes.ts";
import { readShapeFile } from "../../shared/imports/read-shape-file.ts";
import type { XmlDocument } from "../../shared/imports/shapes.ts";
import type { Engine, GroundSummary } from "../../shared/messages.ts";
import type { LonLat } from "../../shared/plan.ts";
import { cleanLabel } from "../../shared/plan-text.ts";
import type { FileRole } from "../../shared/words/refusals/terminal.ts";

/**
 * The shapes of a file, in its own coordinates.
 * @param expected what the file is of
 * @throws Refusal `file/missing`, those of `readShapeFile`
 */
export async function shapesIn(path: string, expected: FileRole): Promise<ShapeFile> {
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) throw refusal("file/missing", { path, expected });
  const read = await readShapeFile(await readFile(path), parseXml, { leavesBad: true });
  if (!read.ok) throw new Refusal(read.failure);
  return read.value;
}

function parseXml(xml: string): XmlDocument {
  return new DOMParser({
    onError: (level, message) => {
      if (level !== "warning") throw new Error(message);
    },
  }).parseFromString(xml, "text/xml") as unknown as XmlDocument;
}

/**
 * Longitude and latitude of all corners in turn; null where the file has them so.
 * @throws Refusal `footprints/other-grid`
 */
export async function placesOf(
  path: string,
  file: ShapeFile,
  engine: Engine,
  { crs }: GroundSummary,
): Promise<readonly LonLat[] | null> {
  const { reference } = file;
  if (reference.kind === "degrees") return null;
  if (reference.kind === "named" && reference.name !== /EPSG:\d+/.exec(crs)?.[0]) {
    const references = { ground: crs, came: reference.name };
    throw refusal("footprints/other-reference", { path, ...references });
  }
  const { lonLat } = await engine.lonLatOf({
    grid: cornersInTurn(file),
    ...("fileName" in reference && { reference }),
  });
  return Array.from({ length: lonLat.length / 2 }, (_, k) => [lonLat[2 * k]!, lonLat[2 * k + 1]!]);
}

const MOST_NAMED = 20;

/** @param wanted columns named on the command line; null = none is. @throws Refusal of the code given */
export function refuseUnknownColumns(
  known: readonly string[],
  wanted: readonly (string | null)[],
  code: "buildings/no-column" | "culverts/no-column",
): void {
  for (const name of wanted) {
    if (name === null || known.includes(name)) continue;
    throw refusal(code, {
      name,
      has: known.slice(0, MOST_NAMED).flatMap((each) => cleanLabel(each) ?? []),
    });
  }
}
