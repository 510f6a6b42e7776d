import { INCH_M } from "../constants.ts";
import { drawnCulvert } from "../pipes/drawn-pipes.ts";
import type { Culvert, Plan, VerticalUnit } from "../plan.ts";
import { naming, numbered } from "../plan-names.ts";
import { cleanLabel } from "../plan-text.ts";
import { metresPer } from "../vertical-unit.ts";
import type { PlacedShape } from "./place-shapes.ts";

/** Units that pipes are sized in, metres. */
export const SIZE_UNITS = { inch: INCH_M, foot: 12 * INCH_M, millimeter: 0.001, meter: 1 } as const;
export type SizeUnit = keyof typeof SIZE_UNITS;

/**
 * Columns that say how low a pipe's ends are (the first and the last corner of its line) and how wide it is; null =
 * none does. Figures are taken only in a unit that someone has said.
 */
export interface PipeColumns {
  readonly firstInvert: string | null;
  readonly lastInvert: string | null;
  readonly invertUnit: VerticalUnit | null;
  readonly size: string | null;
  readonly sizeUnit: SizeUnit | null;
}

export const NO_PIPE_COLUMNS: PipeColumns = {
  ...{ firstInvert: null, lastInvert: null, invertUnit: null, size: null, sizeUnit: null },
};

/** What a culvert may measure, metres, as in the plan's schema: other figures are slips or stand for none. */
const INVERT_M = [-500, 9000] as const;
const SIZE_M = [0.02, 10] as const;

/** A plan with lines as culverts more, each open; `leftOut` counts figures that are no invert and no size. */
export function withCulverts(
  plan: Plan,
  paths: readonly PlacedShape[],
  picked: PipeColumns,
): { readonly plan: Plan; readonly leftOut: number } {
  const { invertUnit, sizeUnit } = picked;
  const invertM = invertUnit === null ? null : metresPer(invertUnit);
  const sizeM = sizeUnit === null ? null : SIZE_UNITS[sizeUnit];
  let leftOut = 0;
  const figure = (
    { columns }: PlacedShape,
    column: string | null,
    unitM: number | null,
    [least, most]: readonly [number, number],
  ): number | null => {
    const value = column === null ? null : columns[column];
    if (unitM === null || value === null || value === undefined || value === "") return null;
    const figureM = Number(value) * unitM;
    // 0 stands for "not measured" in many tables, and no pipe is known by it.
    if (figureM !== 0 && figureM >= least && figureM <= most) return figureM;
    leftOut += 1;
    return null;
  };
  const names = naming("culvert-", numbered("Culvert "));
  for (const { id, name } of plan.culverts ?? []) names.state(id, name);
  for (const shape of paths) names.state(null, nameIn(shape));
  const added = paths.map(
    (shape): Culvert => ({
      ...drawnCulvert(shape.corners, []),
      id: names.giveId(null),
      name: names.giveName(nameIn(shape)),
      invertsM: [
        figure(shape, picked.firstInvert, invertM, INVERT_M),
        figure(shape, picked.lastInvert, invertM, INVERT_M),
      ],
      sizeM: figure(shape, picked.size, sizeM, SIZE_M),
    }),
  );
  return { plan: { ...plan, culverts: [...(plan.culverts ?? []), ...added] }, leftOut };
}

/** A plan with lines as exit roads more. */
export function withRoads(plan: Plan, paths: readonly PlacedShape[]): Plan {
  const names = naming("road-", numbered("Road "));
  for (const { id, name } of plan.roads ?? []) names.state(id, name);
  for (const shape of paths) names.state(null, nameIn(shape));
  const added = paths.map((shape) => ({
    id: names.giveId(null),
    name: names.giveName(nameIn(shape)),
    path: shape.corners,
  }));
  return { ...plan, roads: [...(plan.roads ?? []), ...added] };
}

/** What columns of names are called in files of roads and pipes, the likeliest first. */
const NAME_COLUMNS = [/^name$/i, /^full_?name$/i, /^label$/i];

function nameIn({ columns }: PlacedShape): string | null {
  const keys = Object.keys(columns);
  for (const wanted of NAME_COLUMNS) {
    const key = keys.find((each) => wanted.test(each));
    const name = key === undefined ? null : columns[key];
    if (typeof name === "string" && name.trim() !== "") return cleanLabel(name);
  }
  return null;
}
