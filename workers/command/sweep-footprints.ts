import { buildingsFromShapes, usualIdColumn } from "../../shared/buildings/from-shapes.ts";
import type {
  BuildingColumns,
  FoundBuildings,
  LeftOutKind,
} from "../../shared/buildings/from-shapes-types.ts";
import { layOutShapes } from "../../shared/buildings/lay-out-shapes.ts";
import { type Failure, refusal } from "../../shared/failure.ts";
import { placeShapes } from "../../shared/imports/place-shapes.ts";
import type { Engine, GroundSummary } from "../../shared/messages.ts";
import { placesOf, refuseUnknownColumns, shapesIn } from "./shapes-in.ts";

/** Buildings of a file, and what is to be said of its reference. */
interface ReadBuildings extends FoundBuildings {
  readonly referenceNotes: readonly Failure[];
}

/** Which columns say what, and which outlines are taken that would be left out. */
interface HowRead {
  readonly columns: BuildingColumns;
  readonly takenIn: ReadonlySet<LeftOutKind>;
}

/**
 * The buildings of a file of footprints. Those that lie off the elevation data are kept: the check says so of each.
 * Where no column is named, ids come from one that is called so, and names from one called name, address or label.
 * @throws Refusal `file/...`, those of `readShapeFile`, `footprints/...`, `buildings/no-column`
 */
export async function readBuildings(
  path: string,
  { columns, takenIn }: HowRead,
  engine: Engine,
  ground: GroundSummary,
): Promise<ReadBuildings> {
  const file = await shapesIn(path, "footprints");
  if (file.outlines.length === 0) throw refusal("footprints/no-polygons", { path });
  const places = await placesOf(path, file, engine, ground);
  placeShapes({ ...file, paths: [] }, places, ground.bounds);
  const names = [...new Set(file.outlines.flatMap((each) => Object.keys(each.columns)))];
  const wanted = [columns.id, columns.name, columns.floor, columns.priority];
  refuseUnknownColumns(names, wanted, "buildings/no-column");
  const picked = {
    ...columns,
    id: columns.id ?? usualIdColumn(names),
    name: columns.name ?? names.find((name) => USUAL_NAME.test(name)) ?? null,
  };
  const { referenceNotes } = file;
  const shapes = layOutShapes(file, places);
  return { ...buildingsFromShapes(shapes, picked, ground, takenIn), referenceNotes };
}

const USUAL_NAME = /^(name|address|label)$/i;
