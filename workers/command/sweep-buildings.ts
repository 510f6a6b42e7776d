import { readFile, stat } from "node:fs/promises";
import { DOMParser } from "@xmldom/xmldom";
import { importanceOf } from "../../shared/buildings/from-footprints.ts";
import type { Building } from "../../shared/buildings/types.ts";
import { Refusal, refusalOf } from "../../shared/failure.ts";
import type { FoundShape, ShapeFile } from "../../shared/imports/found-shapes.ts";
import { cornersInTurn, placeShapes } from "../../shared/imports/place-shapes.ts";
import { readShapeFile } from "../../shared/imports/read-shape-file.ts";
import type { XmlDocument } from "../../shared/imports/shapes.ts";
import type { Engine, GroundSummary } from "../../shared/messages.ts";
import type { LonLat, VerticalUnit } from "../../shared/plan.ts";
import { floorOf, nameOf } from "../../shared/plan-footprints.ts";
import { cleanLabel } from "../../shared/plan-text.ts";

/** Columns that say what is known of each building; null = none does. */
export interface SweepColumns {
  readonly id: string | null;
  readonly name: string | null;
  readonly floor: string | null;
  readonly floorUnit: VerticalUnit | null;
  readonly priority: string | null;
}

/** Buildings of a file, and what to say of it. */
export interface ReadBuildings {
  readonly buildings: readonly Building[];
  readonly notes: readonly string[];
}

const USUAL_ID = /^id$/i;
const USUAL_NAME = /^(name|address|label)$/i;

/**
 * The buildings of a file of footprints, each feature one building, in parts where it has several. Those that lie off
 * the elevation data are kept: the check says so of each.
 * @throws Refusal `file/...`, those of `readShapeFile`, `footprints/...`, `buildings/no-column`
 */
export async function readBuildings(
  path: string,
  columns: SweepColumns,
  engine: Engine,
  ground: GroundSummary,
): Promise<ReadBuildings> {
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) {
    throw new Refusal(
      "file/missing",
      `Expected a file of building footprints; there is no file ${path}.`,
      "Check the name and the folder.",
    );
  }
  const read = await readShapeFile(await readFile(path), parseXml);
  if (!read.ok) throw refusalOf(read.failure);
  const file = read.value;
  const outlines = await onEarth(path, file, engine, ground);
  if (outlines.length === 0) {
    throw new Refusal(
      "footprints/none",
      `Expected building outlines as polygons; ${path} has none.`,
      "Export the outlines as polygons.",
    );
  }
  const features = byFeature(file.outlines, outlines);
  refuseUnknownColumns(features, columns);
  return { buildings: buildingsOf(features, columns), notes: file.notes };
}

function parseXml(xml: string): XmlDocument {
  return new DOMParser({
    onError: (level, message) => {
      if (level !== "warning") throw new Error(message);
    },
  }).parseFromString(xml, "text/xml") as unknown as XmlDocument;
}

type Columns = FoundShape["columns"];

interface Feature {
  readonly columns: Columns;
  readonly parts: readonly (readonly LonLat[])[];
}

async function onEarth(
  path: string,
  file: ShapeFile,
  engine: Engine,
  { crs, bounds }: GroundSummary,
): Promise<readonly (readonly LonLat[])[]> {
  const { reference } = file;
  let places: LonLat[] | null = null;
  if (reference.kind !== "degrees") {
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
    places = Array.from({ length: lonLat.length / 2 }, (_, k) => [
      lonLat[2 * k]!,
      lonLat[2 * k + 1]!,
    ]);
  }
  placeShapes({ ...file, paths: [] }, places, bounds);
  let next = 0;
  return file.outlines.map(({ corners }) => {
    const at = places ? places.slice(next, next + corners.length) : corners;
    next += corners.length;
    return at;
  });
}

/** Outlines of one feature are parts of one building. */
function byFeature(
  shapes: readonly FoundShape[],
  outlines: readonly (readonly LonLat[])[],
): Feature[] {
  const features = new Map<Columns, { columns: Columns; parts: (readonly LonLat[])[] }>();
  for (const [k, { columns }] of shapes.entries()) {
    const feature = features.get(columns) ?? { columns, parts: [] };
    feature.parts.push(outlines[k]!);
    features.set(columns, feature);
  }
  return [...features.values()];
}

function refuseUnknownColumns(features: readonly Feature[], columns: SweepColumns): void {
  const known = new Set(features.flatMap((each) => Object.keys(each.columns)));
  for (const name of [columns.id, columns.name, columns.floor, columns.priority]) {
    if (name === null || known.has(name)) continue;
    const names = [...known].slice(0, 20).map((each) => `"${cleanLabel(each)}"`);
    throw new Refusal(
      "buildings/no-column",
      `Expected a column "${name}" in the file of footprints; it has ${names.join(", ") || "none"}.`,
      "Name a column as the file has it.",
    );
  }
}

function buildingsOf(features: readonly Feature[], columns: SweepColumns): Building[] {
  const names = Object.keys(features[0]!.columns);
  const idColumn = columns.id ?? names.find((name) => USUAL_ID.test(name)) ?? null;
  const nameColumn = columns.name ?? names.find((name) => USUAL_NAME.test(name)) ?? null;
  const taken = new Set<string>();
  return features.map(({ columns: cells, parts }, index) => {
    const footprint = { columns: cells, corners: parts[0]!, middle: parts[0]![0]! };
    const asked = { name: nameColumn, floor: columns.floor, floorUnit: columns.floorUnit };
    const id = ownId(idColumn === null ? null : cells[idColumn], index, taken);
    return {
      ...{ id, parts },
      name: nameOf(footprint, asked) ?? id,
      floorM: floorOf(footprint, asked),
      ...importanceOf(columns.priority === null ? null : cells[columns.priority]),
    };
  });
}

/** The person's own id; one made from the place in the file where there is none, and `#2` where it is there twice. */
function ownId(cell: unknown, index: number, taken: Set<string>): string {
  const isId = typeof cell === "string" || typeof cell === "number";
  const own = (isId && cleanLabel(String(cell))) || `building-${index + 1}`;
  let id = own;
  for (let again = 2; taken.has(id); again++) id = `${own}#${again}`;
  taken.add(id);
  return id;
}
