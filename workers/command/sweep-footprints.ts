import { readFile, stat } from "node:fs/promises";
import { DOMParser } from "@xmldom/xmldom";
import { buildingsFromShapes, usualIdColumn } from "../../shared/buildings/from-shapes.ts";
import type { BuildingColumns, FoundBuildings } from "../../shared/buildings/from-shapes-types.ts";
import { layOutShapes } from "../../shared/buildings/lay-out-shapes.ts";
import { Refusal, refusalOf } from "../../shared/failure.ts";
import type { ShapeFile } from "../../shared/imports/found-shapes.ts";
import { cornersInTurn, placeShapes } from "../../shared/imports/place-shapes.ts";
import { readShapeFile } from "../../shared/imports/read-shape-file.ts";
import type { XmlDocument } from "../../shared/imports/shapes.ts";
import type { Engine, GroundSummary } from "../../shared/messages.ts";
import type { LonLat } from "../../shared/plan.ts";
import { cleanLabel } from "../../shared/plan-text.ts";

/** Buildings of a file, and what is to be said of its reference. */
interface ReadBuildings extends FoundBuildings {
  readonly referenceNotes: readonly string[];
}

/**
 * The buildings of a file of footprints. Those that lie off the elevation data are kept: the check says so of each.
 * Where no column is named, ids come from one that is called so, and names from one called name, address or label.
 * @throws Refusal `file/...`, those of `readShapeFile`, `footprints/...`, `buildings/no-column`
 */
export async function readBuildings(
  path: string,
  columns: BuildingColumns,
  engine: Engine,
  ground: GroundSummary,
): Promise<ReadBuildings> {
  const file = await shapesIn(path);
  const places = await placesOf(path, file, engine, ground);
  placeShapes({ ...file, paths: [] }, places, ground.bounds);
  const names = [...new Set(file.outlines.flatMap((each) => Object.keys(each.columns)))];
  refuseUnknownColumns(names, columns);
  const picked = {
    ...columns,
    id: columns.id ?? usualIdColumn(names),
    name: columns.name ?? names.find((name) => USUAL_NAME.test(name)) ?? null,
  };
  const { referenceNotes } = file;
  return { ...buildingsFromShapes(layOutShapes(file, places), picked, ground), referenceNotes };
}

const USUAL_NAME = /^(name|address|label)$/i;

async function shapesIn(path: string): Promise<ShapeFile> {
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) {
    throw new Refusal(
      "file/missing",
      `Expected a file of building footprints; there is no file ${path}.`,
      "Check the name and the folder.",
    );
  }
  const read = await readShapeFile(await readFile(path), parseXml, { leavesBad: true });
  if (!read.ok) throw refusalOf(read.failure);
  if (read.value.outlines.length > 0) return read.value;
  throw new Refusal(
    "footprints/none",
    `Expected building outlines as polygons; ${path} has none.`,
    "Export the outlines as polygons.",
  );
}

function parseXml(xml: string): XmlDocument {
  return new DOMParser({
    onError: (level, message) => {
      if (level !== "warning") throw new Error(message);
    },
  }).parseFromString(xml, "text/xml") as unknown as XmlDocument;
}

/** Longitude and latitude of all corners in turn; null where the file has them so. */
async function placesOf(
  path: string,
  file: ShapeFile,
  engine: Engine,
  { crs }: GroundSummary,
): Promise<readonly LonLat[] | null> {
  const { reference } = file;
  if (reference.kind === "degrees") return null;
  if (reference.kind === "named" && reference.name !== /EPSG:\d+/.exec(crs)?.[0]) {
    throw new Refusal(
      "footprints/other-grid",
      `Expected ${path} in longitude and latitude or in the grid of the elevation data, ${crs}; it is in ${reference.name}.`,
      "Export it again as GeoJSON in longitude and latitude (WGS 84).",
    );
  }
  const { lonLat } = await engine.lonLatOf({
    grid: cornersInTurn(file),
    ...("fileName" in reference && { reference }),
  });
  return Array.from({ length: lonLat.length / 2 }, (_, k) => [lonLat[2 * k]!, lonLat[2 * k + 1]!]);
}

function refuseUnknownColumns(known: readonly string[], columns: BuildingColumns): void {
  for (const name of [columns.id, columns.name, columns.floor, columns.priority]) {
    if (name === null || known.includes(name)) continue;
    const names = known.slice(0, 20).map((each) => `"${cleanLabel(each)}"`);
    throw new Refusal(
      "buildings/no-column",
      `Expected a column "${name}" in the file of footprints; it has ${names.join(", ") || "none"}.`,
      "Name a column as the file has it.",
    );
  }
}
