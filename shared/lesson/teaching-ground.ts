import { FOOT_M } from "../constants.ts";
import type { UnitSystem } from "../units.ts";

/** What a trainer sets on the teaching ground, SI. */
export interface LessonChoice {
  /** Fall of the ground along the line, meters per meter. */
  readonly slope: number;
  /** River level the levee is sized for, meters. */
  readonly riverM: number;
  readonly freeboardM: number;
  /** Base over height. */
  readonly baseRatio: number;
  /** Station that is read, meters from the start of the line. */
  readonly stationM: number;
}

/** What a slider of the lesson sets. */
export type LessonKnob = Exclude<keyof LessonChoice, "stationM">;

/** From where to where a slider goes and by how much, SI. */
interface KnobRange {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/** An invented plane that falls along a straight line and is level across it; round figures in one unit system. */
export interface TeachingGround {
  readonly system: UnitSystem;
  readonly lengthM: number;
  /** Ground at the start of the line, meters. */
  readonly startGroundM: number;
  readonly knobs: Readonly<Record<LessonKnob, KnobRange>>;
  /** Between the stations that are named along the line, meters. */
  readonly markEveryM: number;
  /** Step of the station that is read, meters. */
  readonly stationStepM: number;
  /** Where the lesson starts, and every exercise. */
  readonly first: LessonChoice;
  /** What the drawings have room for before they grow, meters. */
  readonly room: {
    readonly lowM: number;
    readonly highM: number;
    readonly heightM: number;
    readonly baseM: number;
    /** Highest levee of the curve, meters. */
    readonly curveM: number;
  };
}

const SLOPE: KnobRange = { least: 0, most: 0.05, step: 0.001 };
const BASE_RATIO: KnobRange = { least: 2, most: 3, step: 0.1 };

/** The teaching ground of each unit system: the same shape, drawn in feet and in parts of 0.3 m. */
export const TEACHING_GROUNDS: Readonly<Record<UnitSystem, TeachingGround>> = {
  us: teachingGround(
    "us",
    FOOT_M,
    FOOT_M,
    { start: 332.45, river: 333.65, step: 0.05 },
    [331, 335],
    [329, 335],
  ),
  metric: teachingGround(
    "metric",
    0.3,
    1,
    { start: 101.3, river: 101.66, step: 0.02 },
    [100.9, 102.1],
    [100, 102],
  ),
};

/**
 * @param partM one part of every length of the lesson, meters
 * @param unitM unit of the levels, meters
 */
function teachingGround(
  system: UnitSystem,
  partM: number,
  unitM: number,
  level: { readonly start: number; readonly river: number; readonly step: number },
  riverRange: readonly [number, number],
  drawn: readonly [number, number],
): TeachingGround {
  const stepM = level.step * unitM;
  const lengthM = 100 * partM;
  return {
    system,
    lengthM,
    startGroundM: level.start * unitM,
    knobs: {
      slope: SLOPE,
      riverM: { least: riverRange[0] * unitM, most: riverRange[1] * unitM, step: stepM },
      freeboardM: { least: 0, most: 3 * partM, step: stepM },
      baseRatio: BASE_RATIO,
    },
    markEveryM: system === "us" ? 25 * unitM : 10 * unitM,
    stationStepM: unitM,
    first: {
      slope: 0.01,
      riverM: level.river * unitM,
      freeboardM: partM,
      baseRatio: 3,
      stationM: lengthM,
    },
    room: {
      lowM: drawn[0] * unitM,
      highM: drawn[1] * unitM,
      heightM: 4.8 * partM,
      baseM: 14.4 * partM,
      curveM: 6 * partM,
    },
  };
}
