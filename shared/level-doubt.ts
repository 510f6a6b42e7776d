import { FOOT_M } from "./constants.ts";
import type { CutWalk } from "./cut-walk.ts";
import type { LineSamples } from "./line-samples.ts";
import type { Plan, Water } from "./plan.ts";
import type { LineTime } from "./time/types.ts";

/** What is most likely wrong, the likeliest first. */
export type LevelCause =
  /** Feet are taken for meters or the other way round, in the elevation data or in the water. */
  | "unit"
  /** A stage stands where an elevation belongs. */
  | "stage-as-elevation"
  /** The gauge zero is 0, so that the stage alone is taken as an elevation. */
  | "no-gauge-zero"
  | "gauge-zero"
  | "datum"
  | "elevation"
  | "place";

/** Why nothing can be concluded from the heights of a line. Metres. */
export interface LevelDoubt {
  /** All ground of the line at or above the water, the same by far, or all of it far below. */
  readonly kind: "none-below" | "far-below" | "far-above";
  /** Sized-for water at the place where it comes nearest to the ground, and how far that is. */
  readonly waterM: number;
  readonly apartM: number;
  /** Ground on the line, under the base. */
  readonly lowestGroundM: number;
  readonly highestGroundM: number;
  readonly causes: readonly LevelCause[];
  /** True where the counts are no answer: nothing is built, or the water is far off. */
  readonly countsUnknown: boolean;
}

/** Water that leaves all ground of a line by more than this is a mistake: five times the usual height limit. Judgement. */
export const FAR_M = 20 * FOOT_M;
/** Between common datums the shift is no larger. From memory: about -1 to +5 ft between NGVD 29 and NAVD 88. */
const DATUM_M = 5 * FOOT_M;
/** Stages are seldom higher. Judgement. */
const MOST_STAGE_M = 80 * FOOT_M;

interface Reach {
  readonly lowestM: number;
  readonly highestM: number;
  /** Of the sample where the water is nearest to the ground from below, and from above. */
  readonly below: { readonly apartM: number; readonly waterM: number };
  readonly above: { readonly apartM: number; readonly waterM: number };
}

/**
 * Whether the water a line is sized for and its ground belong together; null where some known ground lies
 * below the water by a height that can be built against, and where no ground is known.
 */
export function levelDoubt(
  plan: Plan,
  samples: LineSamples,
  cuts: CutWalk,
  isBuilt: boolean,
): LevelDoubt | null {
  const reach = reachOf(samples, cuts);
  if (!reach) return null;
  const { below, above, lowestM, highestM } = reach;
  const kind = kindOf(below.apartM, above.apartM);
  if (!kind) return null;
  const { waterM, apartM } = kind === "far-above" ? above : below;
  const ground = { lowestM, highestM };
  return {
    kind,
    waterM,
    apartM,
    lowestGroundM: lowestM,
    highestGroundM: highestM,
    causes: causesOf(kind, plan.water, waterM, apartM, ground),
    countsUnknown: kind !== "none-below" || !isBuilt,
  };
}

/** A line's time without any verdict: it cannot be late for water that does not reach it. */
export function withoutVerdict(time: LineTime): LineTime {
  return { ...time, verdicts: [], inTime: null, waysOut: null };
}

function kindOf(belowM: number, aboveM: number): LevelDoubt["kind"] | null {
  if (belowM > FAR_M) return "far-below";
  if (belowM >= 0) return "none-below";
  return aboveM > FAR_M ? "far-above" : null;
}

function reachOf(samples: LineSamples, { groundM, lowestGroundM }: CutWalk): Reach | null {
  let [lowestM, highestM] = [Infinity, -Infinity];
  let [below, above] = [
    { apartM: Infinity, waterM: 0 },
    { apartM: Infinity, waterM: 0 },
  ];
  for (let i = 0; i < samples.count; i++) {
    const ground = groundM[i]!;
    if (Number.isNaN(ground)) continue;
    const waterM = samples.waterM[i]!;
    const lowest = Math.min(ground, Number.isNaN(lowestGroundM[i]!) ? ground : lowestGroundM[i]!);
    lowestM = Math.min(lowestM, lowest);
    highestM = Math.max(highestM, ground);
    if (lowest - waterM < below.apartM) below = { apartM: lowest - waterM, waterM };
    if (waterM - ground < above.apartM) above = { apartM: waterM - ground, waterM };
  }
  return lowestM <= highestM ? { lowestM, highestM, below, above } : null;
}

function causesOf(
  kind: LevelDoubt["kind"],
  water: Water,
  waterM: number,
  apartM: number,
  ground: { readonly lowestM: number; readonly highestM: number },
): LevelCause[] {
  const isFar = kind !== "none-below";
  const byStage = water.by === "stage";
  const wouldFit = (factor: number) =>
    waterM >= ground.lowestM * factor - FAR_M && waterM <= ground.highestM * factor + FAR_M;
  const causes: (LevelCause | false)[] = [
    isFar && (wouldFit(FOOT_M) || wouldFit(1 / FOOT_M)) && "unit",
    kind === "far-below" && byStage && water.gaugeZeroM === 0 && "no-gauge-zero",
    kind === "far-below" && !byStage && Math.abs(waterM) < MOST_STAGE_M && "stage-as-elevation",
    byStage ? "gauge-zero" : isFar && "elevation",
    apartM <= DATUM_M && "datum",
    "place",
  ];
  return causes.filter((cause) => cause !== false);
}
