import { isSameValue, type LoneValue, type MarkChoice } from "../../shared/ground-marks.ts";
import type { VerticalUnit } from "../../shared/plan.ts";
import { metresPer } from "../../shared/vertical-unit.ts";
import type { BlockStore } from "./block-store.ts";
import { type Extreme, type Extremes, makeExtremes } from "./extremes.ts";
import { type GroundRange, loneValues } from "./lone-values.ts";
import type { OpenRaster, RasterLevel } from "./open-raster.ts";
import { type HeightSurvey, surveyHeights } from "./survey-heights.ts";

import { withoutValues } from "./without-values.ts";

/** A raster with the unit its heights are in. */
export interface RasterInUnit {
  readonly raster: OpenRaster;
  readonly unit: VerticalUnit;
}

/** What is known of values that may mark missing data. */
export interface Marks {
  /** What the person said. */
  readonly choices: readonly MarkChoice[];
  /** What is still to be asked: until then those cells have no data. */
  readonly asked: readonly LoneValue[];
}

export interface SettledGround {
  readonly levels: ReadonlyMap<OpenRaster, readonly RasterLevel[]>;
  readonly heights: HeightSurvey;
  readonly asked: readonly LoneValue[];
  /**
   * A height that stands apart among cells read in full resolution and that the survey did not see.
   * @param rasterAt index of the raster that a cell comes from
   */
  readonly unseen: (
    heightsM: Float32Array,
    rasterAt: (index: number) => number,
  ) => LoneValue | null;
}

/** Each round may find what the one before it hid. */
const MOST_ROUNDS = 6;

/**
 * Surveys the heights and hides what is no ground: values that the person says are missing data, and those that
 * stand apart and that nobody has spoken of. A raster that has such cells is used without its overviews, which
 * may hold means of them.
 */
export async function settleMarks(
  rasters: readonly RasterInUnit[],
  { choices, asked: askedBefore }: Marks,
  store: BlockStore,
): Promise<SettledGround> {
  const whole = rasters.map(({ raster, unit }) => raster.levels(metresPer(unit), store));
  const asked = [...askedBefore];
  const holes = () => [
    ...choices.filter(({ is }) => is === "hole").map(({ value }) => value),
    ...asked.map(({ value }) => value),
  ];
  const settled = (value: number) =>
    [...choices, ...asked].some((each) => isSameValue(value, each.value));

  for (let round = 1; ; round++) {
    const hidden = holes();
    const isStray = rasters.map(({ raster }) => raster.strays.values.length > 0);
    const levels = rasters.map(({ unit }, i) =>
      usable(
        whole[i]!,
        hidden.map((value) => value * metresPer(unit)),
        isStray[i]!,
      ),
    );
    const { heights, extremes } = await surveyHeights(levels, store);
    const { found, rest } = lonesOf(
      rasters,
      extremes,
      null,
      heights.fromOverview ? "sample" : "all",
    );
    const fresh = found.filter(({ value }) => !settled(value));
    asked.push(...fresh);
    const same = rasters.every(({ raster }, i) => isStray[i] === raster.strays.values.length > 0);
    if ((fresh.length > 0 || !same) && round < MOST_ROUNDS) continue;
    return {
      levels: new Map(rasters.map(({ raster }, i) => [raster, levels[i]!])),
      heights,
      asked,
      unseen(heightsM, rasterAt) {
        if (!heights.fromOverview) return null;
        const here = makeExtremes();
        here.look(heightsM, 0, heightsM.length, 0);
        const sourceOf = ({ heightM }: Extreme) => rasterAt(heightsM.indexOf(heightM));
        const lones = lonesOf(rasters, here, rest, "plan", sourceOf).found;
        return lones.find(({ value }) => !settled(value)) ?? null;
      },
    };
  }
}

function usable(
  levels: readonly RasterLevel[],
  hiddenM: readonly number[],
  isStray: boolean,
): readonly RasterLevel[] {
  const full = levels[0]!;
  if (hiddenM.length > 0) return [withoutValues(full, hiddenM)];
  return isStray ? [full] : levels;
}

function lonesOf(
  rasters: readonly RasterInUnit[],
  extremes: Extremes,
  known: GroundRange | null,
  looked: LoneValue["looked"],
  sourceOf = ({ source }: Extreme) => source,
): { readonly found: readonly LoneValue[]; readonly rest: GroundRange } {
  const writtenAs = (heightM: number) => writtenValue(heightM, rasters[0]!.unit);
  const { found, rest } = loneValues(extremes, known, writtenAs);
  const asLone = (lone: (typeof found)[number]): LoneValue => {
    const { raster, unit } = rasters[sourceOf(lone)]!;
    const { heightM, cells, side, gapM } = lone;
    return {
      value: writtenValue(heightM, unit),
      unit,
      file: { name: raster.name, bytes: raster.bytes },
      cells,
      share: cells / extremes.cells,
      looked,
      side,
      gapM,
    };
  };
  return { found: found.map(asLone), rest };
}

/** The shortest number in the raster's unit that reads as this height. */
function writtenValue(heightM: number, unit: VerticalUnit): number {
  const value = heightM / metresPer(unit);
  for (let digits = 1; digits < 12; digits++) {
    const short = Number(value.toPrecision(digits));
    if (Math.fround(short * metresPer(unit)) === heightM) return short;
  }
  return value;
}
