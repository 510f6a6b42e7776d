import { DEFAULT_GROUND } from "./defaults.ts";
import { type Failure, failureOf } from "./failure.ts";
import type { Plan, TerrainRef } from "./plan.ts";

/** Files that hold no heights: those beside a raster, and a VRT, which only names rasters. */
const WITHOUT_HEIGHTS = /\.(vrt|prj|tfw|tifw|tiffw|gtw|bpw|wld|xml|ovr|msk)$/i;

/**
 * Whether what a plan says of its ground was said of these files: every raster among them is one that the plan
 * names, by name and size, or the plan names none at all.
 */
export function speaksOf({ terrain }: Plan, files: readonly TerrainRef[]): boolean {
  const rasters = files.filter(({ name }) => !WITHOUT_HEIGHTS.test(name));
  const isNamed = (file: TerrainRef) =>
    terrain.some(({ name, bytes }) => name === file.name && bytes === file.bytes);
  return terrain.length === 0 || rasters.every(isNamed);
}

/** What was said of other elevation data and does not stand on the one now opened. */
export interface LeftBehind {
  /** Accuracy as it was stated, metres; null when none was. */
  readonly rmseM: number | null;
  /** What all of its heights were raised by, metres; 0 when by nothing. */
  readonly correctionM: number;
  /** Vertical datum of the ground as it was noted; empty when none was. */
  readonly datumNote: string;
  /** Where water and ground were found to be in one datum; empty when nothing was noted. */
  readonly sameDatumNote: string;
  /** Offset from gauge to ground that stays, because the level hangs on it, and has to be looked at; metres. */
  readonly offsetM: number | null;
}

/**
 * That what was said of other elevation data does not stand on this one; null when nothing of weight was said.
 * @param typicalM accuracy that is taken now, metres; null where that is not known yet
 * @param canUndo whether undo brings it back
 */
export function leftBehind(
  left: LeftBehind,
  typicalM: number | null,
  canUndo: boolean,
): Failure | null {
  const rmseM = left.rmseM === typicalM ? null : left.rmseM;
  const { correctionM, datumNote, sameDatumNote, offsetM } = left;
  const isSaid = rmseM !== null || correctionM !== 0 || datumNote !== "" || sameDatumNote !== "";
  if (!isSaid && offsetM === null) return null;
  return failureOf("ground/other-data", { left: { ...left, rmseM }, canUndo });
}

/**
 * The plan as it stands on these files. Accuracy, correction, vertical unit and datum of the ground belong to the elevation data
 * they were said of; so does the note that water and ground are in one datum, and an offset of 0.
 */
export function planOnGround(
  plan: Plan,
  files: readonly TerrainRef[],
): { readonly plan: Plan; readonly left: LeftBehind | null } {
  if (speaksOf(plan, files)) return { plan, left: null };
  const { ground, water } = plan;
  const { rmseM, correctionM, verticalUnit, datumNote } = DEFAULT_GROUND;
  const offsetM = water.datumOffsetM === 0 ? null : water.datumOffsetM;
  return {
    plan: {
      ...plan,
      ground: { ...ground, rmseM, correctionM, verticalUnit, datumNote },
      water: { ...water, datumNote: "", datumOffsetM: offsetM },
    },
    left: {
      ...{ rmseM: ground.rmseM, correctionM: ground.correctionM, datumNote: ground.datumNote },
      ...{ sameDatumNote: water.datumNote, offsetM },
    },
  };
}
