import type { FoundShape, ShapeFile } from "../imports/found-shapes.ts";
import type { LonLat } from "../plan.ts";
import { path } from "../plan-geometry.ts";
import { cleanLabel } from "../plan-text.ts";
import { metresPer } from "../vertical-unit.ts";
import { areaM2, crossesItself, isSliver, outlineKey } from "./footprint-shape.ts";
import type {
  BuildingColumns,
  BuildingNote,
  CoveredGround,
  FoundBuildings,
  LeftOutBuilding,
} from "./from-shapes-types.ts";
import type { Building, Priority } from "./types.ts";

/** A floor so far under or over all ground is in another unit or on another datum, meters. Source: judgement. */
const FLOOR_BELOW_M = 5;
const FLOOR_ABOVE_M = 15;

/** The parts of one feature. */
interface Footprint {
  readonly shape: FoundShape;
  readonly parts: readonly (readonly LonLat[])[];
  readonly holes: number;
}

/**
 * The buildings of a file, one for each feature that has outlines, in its order. What is the outline of another, or
 * no building by its size, is given apart; all else that is not as it should be is told, and the building taken.
 * @param places longitude and latitude of what `cornersInTurn` gives; null = the file has them so
 * @param ground null = none is open: then nothing is told of where buildings and floors are
 * @throws Refusal `plan/bad-geometry` where a place is none
 */
export function buildingsFromShapes(
  file: ShapeFile,
  places: readonly LonLat[] | null,
  columns: BuildingColumns,
  ground: CoveredGround | null,
): FoundBuildings {
  const notes: BuildingNote[] = file.leftOut.map((each) => ({ kind: "left-out", ...each }));
  const noOutline = file.others + file.paths.length;
  if (noOutline > 0) notes.push({ kind: "no-outline", count: noOutline });
  const buildings: Building[] = [];
  const leftOut: LeftOutBuilding[] = [];
  const giveId = idsFor(file, columns);
  const sameAs = new Map<string, string>();
  for (const footprint of footprintsOf(file, places)) {
    const told: BuildingNote[] = [];
    const building = buildingOf(footprint, columns, giveId(footprint.shape, told), ground, told);
    const { id, parts } = building;
    const key = outlineKey(parts);
    const of = sameAs.get(key);
    if (of !== undefined) {
      leftOut.push({ building, why: { kind: "duplicate", of } });
    } else if (!parts.some(crossesItself) && isSliver(parts)) {
      leftOut.push({ building, why: { kind: "sliver", areaM2: areaM2(parts) } });
    } else {
      sameAs.set(key, id);
      buildings.push(building);
      notes.push(...told);
      tellShape(footprint, id, ground, notes);
    }
  }
  return { buildings, leftOut, notes };
}

function footprintsOf({ outlines }: ShapeFile, places: readonly LonLat[] | null): Footprint[] {
  let next = 0;
  const found = new Map<number, { shape: FoundShape; parts: LonLat[][]; holes: number }>();
  for (const shape of outlines) {
    const at = places ? places.slice(next, next + shape.corners.length) : shape.corners;
    next += shape.corners.length;
    const part = path(at, "A building", true);
    const same = found.get(shape.feature);
    if (same) {
      same.parts.push(part);
      same.holes += shape.holes;
    } else {
      found.set(shape.feature, { shape, parts: [part], holes: shape.holes });
    }
  }
  return [...found.values()];
}

/** Gives each building the identifier of its file, or its place in the file, no two the same. */
function idsFor({ outlines }: ShapeFile, { id: column }: BuildingColumns) {
  const cameOf = ({ columns, ownId }: FoundShape): string | null => {
    const cell = column === null ? ownId : columns[column];
    return typeof cell === "string" || typeof cell === "number" ? cleanLabel(String(cell)) : null;
  };
  const stated = new Set(outlines.map(cameOf));
  const given = new Set<string>();
  return (shape: FoundShape, told: BuildingNote[]): string => {
    const came = cameOf(shape);
    let id = came ?? String(shape.feature + 1);
    if (given.has(id) || (came === null && stated.has(id))) {
      const stem = id;
      for (let n = 2; given.has(id) || stated.has(id); n++) id = `${stem} (${n})`;
      if (came !== null) told.push({ kind: "repeated-id", id, came });
    }
    given.add(id);
    return id;
  };
}

function buildingOf(
  { shape, parts }: Footprint,
  picked: BuildingColumns,
  id: string,
  ground: CoveredGround | null,
  told: BuildingNote[],
): Building {
  const cell = (column: string | null): string => {
    const value = column === null ? null : shape.columns[column];
    return typeof value === "string" || typeof value === "number" ? String(value).trim() : "";
  };
  const came = { floor: cell(picked.floor), weight: cell(picked.weight) };
  const priority = cell(picked.priority).toLowerCase();
  const floorM = floorOf(came.floor, picked, ground);
  if (came.floor === "") told.push({ kind: "no-floor", id });
  else if (floorM === null) told.push({ kind: "doubtful-floor", id, came: came.floor });
  const weight = came.weight === "" ? 1 : Number(came.weight);
  const isWeight = Number.isFinite(weight) && weight >= 0;
  if (!isWeight) told.push({ kind: "bad-weight", id, came: came.weight });
  const isPriority = ["first", "never", ""].includes(priority);
  if (!isPriority) told.push({ kind: "bad-priority", id, came: cell(picked.priority) });
  return {
    id,
    name: cleanLabel(cell(picked.name)) ?? "",
    parts,
    floorM,
    weight: isWeight ? weight : 1,
    priority: isPriority ? (priority as Priority) : "",
  };
}

/** Meters; null where it is not a figure, 0, of no stated unit, or far from all ground. */
function floorOf(
  came: string,
  { floorUnit }: BuildingColumns,
  ground: CoveredGround | null,
): number | null {
  const figure = Number(came);
  if (floorUnit === null || came === "" || !Number.isFinite(figure) || figure === 0) return null;
  const floorM = figure * metresPer(floorUnit);
  const [least, most] = ground
    ? [ground.lowestM - FLOOR_BELOW_M, ground.highestM + FLOOR_ABOVE_M]
    : [-500, 9000];
  return floorM >= least && floorM <= most ? floorM : null;
}

function tellShape(
  { parts, holes }: Footprint,
  id: string,
  ground: CoveredGround | null,
  notes: BuildingNote[],
): void {
  if (parts.length > 1) notes.push({ kind: "parts", id, parts: parts.length });
  if (holes > 0) notes.push({ kind: "holes", id, holes });
  if (parts.some(crossesItself)) notes.push({ kind: "self-crossing", id });
  if (!ground) return;
  const [west, south, east, north] = ground.bounds;
  const corners = parts.flat();
  const off = corners.filter(
    ([lon, lat]) => lon < west || lon > east || lat < south || lat > north,
  ).length;
  if (off > 0) notes.push({ kind: "off-data", id, isWholly: off === corners.length });
}
