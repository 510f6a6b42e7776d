import type { GroundSampler } from "./ground.ts";
import type { Section } from "./plan.ts";
import { cutAcross, emptyCut } from "./section.ts";
import type { Trace } from "./trace.ts";

/** The levee cut across at every sample of a trace; n values each, NaN where needed ground is missing. */
export interface CutWalk {
  readonly groundM: Float64Array;
  readonly lowestGroundM: Float64Array;
  readonly heightM: Float64Array;
  readonly greatestHeightM: Float64Array;
  readonly areaM2: Float64Array;
  readonly toeLeftM: Float64Array;
  readonly toeRightM: Float64Array;
  /** Crest less ground at each toe. */
  readonly dropLeftM: Float64Array;
  readonly dropRightM: Float64Array;
  /** 1 where a side does not meet the ground. */
  readonly toeOpen: Uint8Array;
}

/** Cuts across at every sample of the trace, with every ground height raised by `shiftM`. */
export function cutWalk(
  trace: Trace,
  ground: GroundSampler,
  section: Section,
  shiftM: number,
): CutWalk {
  const { count, xM, yM, leftNormal, crestM } = trace;
  const walk = {
    groundM: new Float64Array(count),
    lowestGroundM: new Float64Array(count),
    heightM: new Float64Array(count),
    greatestHeightM: new Float64Array(count),
    areaM2: new Float64Array(count),
    toeLeftM: new Float64Array(count),
    toeRightM: new Float64Array(count),
    dropLeftM: new Float64Array(count),
    dropRightM: new Float64Array(count),
    toeOpen: new Uint8Array(count),
  };
  const cut = emptyCut();
  for (let i = 0; i < count; i++) {
    const leftX = leftNormal[2 * i]!;
    const leftY = leftNormal[2 * i + 1]!;
    cutAcross(cut, ground, section, xM[i]!, yM[i]!, leftX, leftY, crestM[i]!, shiftM);
    walk.groundM[i] = cut.groundM;
    walk.lowestGroundM[i] = cut.lowestM;
    walk.heightM[i] = cut.heightM;
    walk.greatestHeightM[i] = cut.heightM > 0 ? crestM[i]! - cut.lowestM : cut.heightM;
    walk.areaM2[i] = cut.areaM2;
    walk.toeLeftM[i] = cut.toeLeftM;
    walk.toeRightM[i] = cut.toeRightM;
    walk.dropLeftM[i] = cut.dropLeftM;
    walk.dropRightM[i] = cut.dropRightM;
    walk.toeOpen[i] = cut.toeOpen ? 1 : 0;
  }
  return walk;
}
