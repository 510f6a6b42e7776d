import type { FoundShape } from "../imports/found-shapes.ts";
import { cleanLabel } from "../plan-text.ts";
import { metresPer } from "../vertical-unit.ts";
import type {
  BuildingColumns,
  BuildingNote,
  CoveredGround,
  FoundBuildings,
  LaidOutFeature,
  LaidOutShapes,
  LeftOutBuilding,
  LeftOutKind,
} from "./from-shapes-types.ts";
import type { Building } from "./types.ts";

/** A floor so far under or over all ground is in another unit or on another datum, meters. Source: judgement. */
const FLOOR_BELOW_M = 5;
const FLOOR_ABOVE_M = 15;
/** Most that one building counts in the choice. */
export const MOST_WEIGHT = 1000;

const USUAL_ID = /^id$/i;

/** The column that holds identifiers by its name; null where none is called so. */
export function usualIdColumn(names: readonly string[]): string | null {
  return names.find((name) => USUAL_ID.test(name)) ?? null;
}

/**
 * The buildings of a file, one for each feature that has outlines, in its order. What is the outline of another, or
 * no building by its size, is given apart; all else that is not as it should be is told, and the building taken.
 * @param ground null = none is open: then nothing is told of where buildings and floors are
 * @param takenIn kinds that are taken all the same; the ids of the others stay as they are
 */
export function buildingsFromShapes(
  { features, leftOut: badShapes, noOutline }: LaidOutShapes,
  columns: BuildingColumns,
  ground: CoveredGround | null,
  takenIn: ReadonlySet<LeftOutKind> = new Set(),
): FoundBuildings {
  const notes: BuildingNote[] = badShapes.map((each) => ({ kind: "left-out", ...each }));
  if (noOutline > 0) notes.push({ kind: "no-outline", count: noOutline });
  const buildings: Building[] = [];
  const leftOut: LeftOutBuilding[] = [];
  const giveId = idsFor(features, columns);
  const sameAs = new Map<string, string>();
  for (const feature of features) {
    const own: BuildingNote[] = [];
    const building = buildingOf(feature, columns, giveId(feature.shape, own), ground, own);
    const why = doubtOf(feature, sameAs.get(feature.outlineKey));
    if (why && !takenIn.has(why.kind)) {
      leftOut.push({ building, why });
      continue;
    }
    if (why) notes.push({ kind: "taken-in", id: building.id, why });
    if (!sameAs.has(feature.outlineKey)) sameAs.set(feature.outlineKey, building.id);
    buildings.push(building);
    notes.push(...own);
    tellShape(feature, building.id, ground, notes);
  }
  return { buildings, leftOut, notes };
}

/** Why an outline is taken to be no building of its own; null where it is one. */
function doubtOf(
  { sliverM2 }: LaidOutFeature,
  of: string | undefined,
): LeftOutBuilding["why"] | null {
  if (of !== undefined) return { kind: "duplicate", of };
  return sliverM2 === null ? null : { kind: "sliver", areaM2: sliverM2 };
}

const KINDS: readonly LeftOutKind[] = ["duplicate", "sliver"];

/** How many outlines of each kind are left out, or taken in because the person said so. */
export function doubtfulCounts({
  leftOut,
  notes,
}: FoundBuildings): ReadonlyMap<LeftOutKind, number> {
  const all = [...leftOut, ...notes.filter((note) => note.kind === "taken-in")];
  const counted = KINDS.map(
    (kind) => [kind, all.filter(({ why }) => why.kind === kind).length] as const,
  );
  return new Map(counted.filter(([, count]) => count > 0));
}

/** Gives each building the identifier of its file, or its place in the file, no two the same. */
function idsFor(features: LaidOutShapes["features"], { id: column }: BuildingColumns) {
  const cameOf = ({ columns, ownId }: FoundShape): string | null => {
    const cell = column === null ? ownId : columns[column];
    return typeof cell === "string" || typeof cell === "number" ? cleanLabel(String(cell)) : null;
  };
  const stated = new Set(features.map(({ shape }) => cameOf(shape)));
  const given = new Set<string>();
  return (shape: FoundShape, own: BuildingNote[]): string => {
    const came = cameOf(shape);
    let id = came ?? String(shape.feature + 1);
    if (given.has(id) || (came === null && stated.has(id))) {
      const stem = id;
      for (let n = 2; given.has(id) || stated.has(id); n++) id = `${stem} (${n})`;
      if (came !== null) own.push({ kind: "repeated-id", id, came });
    }
    given.add(id);
    return id;
  };
}

function buildingOf(
  { shape, parts }: LaidOutFeature,
  picked: BuildingColumns,
  id: string,
  ground: CoveredGround | null,
  own: BuildingNote[],
): Building {
  const cell = (column: string | null): string => {
    const value = column === null ? null : shape.columns[column];
    return typeof value === "string" || typeof value === "number" ? String(value).trim() : "";
  };
  const floor = cell(picked.floor);
  const floorM = floorOf(floor, picked, ground);
  if (picked.floor !== null && picked.floorUnit !== null && floorM === null) {
    own.push(floor === "" ? { kind: "no-floor", id } : { kind: "doubtful-floor", id, came: floor });
  }
  const importance = importanceOf(cell(picked.priority));
  if (!importance) own.push({ kind: "bad-priority", id, came: cell(picked.priority) });
  return {
    ...{ id, name: cleanLabel(cell(picked.name)) ?? `Building ${id}`, parts, floorM },
    ...(importance ?? PLAIN),
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

type Importance = Pick<Building, "priority" | "weight">;
const PLAIN: Importance = { priority: "", weight: 1 };

/** What a cell says of a building's part in the choice; null for one that is not understood. */
function importanceOf(cell: string): Importance | null {
  const word = cell.toLowerCase();
  if (word === "") return PLAIN;
  if (word === "first" || word === "never") return { priority: word, weight: 1 };
  const weight = Number(cell);
  return weight > 0 && weight <= MOST_WEIGHT ? { priority: "", weight } : null;
}

function tellShape(
  { parts, holes, crossesItself }: LaidOutFeature,
  id: string,
  ground: CoveredGround | null,
  notes: BuildingNote[],
): void {
  if (parts.length > 1) notes.push({ kind: "parts", id, parts: parts.length });
  if (holes > 0) notes.push({ kind: "holes", id, holes });
  if (crossesItself) notes.push({ kind: "self-crossing", id });
  if (!ground) return;
  const [west, south, east, north] = ground.bounds;
  const corners = parts.flat();
  const off = corners.filter(
    ([lon, lat]) => lon < west || lon > east || lat < south || lat > north,
  ).length;
  if (off > 0) notes.push({ kind: "off-data", id, isWholly: off === corners.length });
}
