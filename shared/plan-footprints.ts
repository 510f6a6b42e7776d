import { type Failure, failureOf, type Outcome, outcomeOf, refusal } from "./failure.ts";
import { middleOf } from "./geo-box.ts";
import type { ShapeFile } from "./imports/found-shapes.ts";
import { type Bounds, type PlacedShape, placeShapes } from "./imports/place-shapes.ts";
import type { LonLat, Structure, VerticalUnit } from "./plan.ts";
import { naming, numbered } from "./plan-names.ts";
import { cleanLabel } from "./plan-text.ts";
import { metresPer } from "./vertical-unit.ts";

/** An outline on the ground, with the columns that its file has for it. */
export interface Footprint extends PlacedShape {
  readonly middle: LonLat;
}

/** Outlines on the ground that is open. */
export interface Footprints {
  readonly footprints: readonly Footprint[];
  readonly notes: readonly Failure[];
}

/** Columns that say what a building is called and where its lowest floor is; null = none does. */
export interface FootprintColumns {
  readonly name: string | null;
  readonly floor: string | null;
  /** Of the floors; null until someone has said it: then no floor is taken. */
  readonly floorUnit: VerticalUnit | null;
}

/** Columns are looked for in so many outlines. */
const LOOKED_AT = 500;

/**
 * The outlines that lie on the ground that is open. Failures: `footprints/none`, and those of `placeShapes`.
 * @param places the corners of all shapes in the order of `cornersInTurn`; null = the file has them so
 * @param within bounds of the ground; null = all are taken
 */
export function placeFootprints(
  file: ShapeFile,
  places: readonly LonLat[] | null,
  within: Bounds | null,
): Outcome<Footprints> {
  return outcomeOf(() => {
    const { outlines: found, paths, others } = file;
    if (found.length === 0) throw refusal("footprints/none", { lines: paths.length, others });
    const { outlines, notes } = placeShapes({ ...file, paths: [] }, places, within);
    const footprints = outlines.map(
      (each): Footprint => ({ ...each, middle: middleOf(each.corners) }),
    );
    const shapes = others + paths.length;
    const said = shapes > 0 ? [failureOf("shapes/others-left-out", { shapes })] : [];
    return { footprints, notes: [...notes, ...said] };
  });
}

/** Buildings of a plan out of footprints; identifiers and names that it has are not given again. */
export function buildingsOf(
  taken: readonly Footprint[],
  present: readonly Structure[],
  columns: FootprintColumns,
): Structure[] {
  const names = naming("structure-", numbered("Building "));
  for (const { id, name } of present) names.state(id, name);
  for (const footprint of taken) names.state(null, nameOf(footprint, columns));
  return taken.map((footprint) => ({
    id: names.giveId(null),
    name: names.giveName(nameOf(footprint, columns)),
    outline: footprint.corners,
    floorM: floorOf(footprint, columns),
  }));
}

/** What the chosen column calls a building; null when it says nothing. */
export function nameOf({ columns }: Footprint, { name }: FootprintColumns): string | null {
  const value = name === null ? null : columns[name];
  return typeof value === "string" || typeof value === "number" ? cleanLabel(String(value)) : null;
}

/** Its lowest floor as the chosen column has it, metres; null when it says nothing or nobody has said the unit. */
export function floorOf(
  { columns }: Footprint,
  { floor, floorUnit }: FootprintColumns,
): number | null {
  const value = floor === null ? null : columns[floor];
  if (floorUnit === null || value === null || value === undefined || value === "") return null;
  const figure = Number(value);
  const floorM = figure * metresPer(floorUnit);
  return floorM >= -500 && floorM <= 9000 && figure !== 0 ? floorM : null;
}

/** The columns of shapes, those that hold figures alone apart. */
export function columnsOf(footprints: readonly Pick<Footprint, "columns">[]): {
  readonly all: readonly string[];
  readonly figures: readonly string[];
} {
  const values = new Map<string, unknown[]>();
  for (const { columns } of footprints.slice(0, LOOKED_AT)) {
    for (const [name, value] of Object.entries(columns)) {
      if (typeof value !== "string" && typeof value !== "number") continue;
      values.set(name, [...(values.get(name) ?? []), value]);
    }
  }
  const all = [...values.keys()];
  const isFigure = (value: unknown) => value !== "" && Number.isFinite(Number(value));
  return { all, figures: all.filter((name) => values.get(name)!.every(isFigure)) };
}
