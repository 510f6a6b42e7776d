import { bagOrder } from "../bag-order.ts";
import { type CutWalk, cutInto, cutWalk, emptyCutWalk } from "../cut-walk.ts";
import { accuracyOf } from "../ground-accuracy.ts";
import { withWaterHigher } from "../sections/built-reach.ts";
import type { Totals } from "../sizing-types.ts";
import { stationsOf } from "../stations.ts";
import { bagsOf } from "../totals.ts";
import { type LineOnGround, type WalkedLine, walkLine } from "../walk-line.ts";
import { type ErrorModel, errorModel } from "./error-model.ts";
import { fieldGround } from "./field-ground.ts";
import { type ErrorReading, lineErrors } from "./line-errors.ts";
import { type Stretches, stretchesAround, volumesOf, whereOver } from "./station-stretches.ts";
import { type StripGround, stripGround } from "./strip-ground.ts";
import type { BagCounts, GroundSimulation, StationChance } from "./types.ts";
import { whereToSurvey } from "./where-to-survey.ts";

/** Grounds tried: half of them are the other half's errors turned over. */
const FIELDS = 500;
/** Grounds tried for what surveying every station would leave open. */
const FIELDS_SURVEYED = 100;
/** The same plan gives the same figures. */
const SEED = 20;
/** Cells have errors of their own as far out as the base may come where the ground is lower by this many RMSE. */
const REACH_RMSE = 3;
const FARTHEST_M = 15;

/**
 * Sizes a line on many grounds, each the elevation data with an error drawn by the plan's error model that passes
 * through the ground read in the field. Each is cut across and counted by the functions of the ordinary sizing.
 * Throws a `Refusal` as `sizeLine` does.
 */
export function simulateGround(inputs: LineOnGround): GroundSimulation {
  const { plan, alignment, ground, plane } = inputs;
  const walked = walkLine(inputs);
  const { samples, built, waterSide, surveyed, line, breaksM, surface, cuts, whole } = walked;
  const cellM = ground.longCellM ?? ground.cellM;
  const model = errorModel(plan.ground, accuracyOf(plan.ground, cellM).rmseM);
  const stations = stationsOf({
    ...{ plan, line, breaksM, samples, cuts, ground, plane, surface, waterSide, surveyed },
  });
  const stakesM = stations.map(({ chainageM }) => chainageM);
  const stretches = stretchesAround(stakesM, samples);
  const used = countsOf(whole);
  const onLine = (surveyed?.readings ?? []).map(
    ({ chainageM, readM, dataM }): ErrorReading => ({ chainageM, errorM: readM - dataM }),
  );
  const beside = (surveyed?.beside ?? []).map(
    ({ chainageM, offsetM, readM, dataM }): ErrorReading => ({
      ...{ chainageM, offsetM, errorM: readM - dataM },
    }),
  );
  const readings = [...onLine, ...beside];
  const common = { lineId: alignment.id, model, readings: readings.length, used };
  if (!(model.rmseM > 0) || !(whole.builtLengthM > 0)) {
    const over = whereOver(stretches, cuts);
    return {
      ...common,
      fields: 0,
      ...{ expected: used, oneInTwo: used, nineInTen: used, nineInTenSurveyed: null },
      overLimit: over.some(Boolean) ? 1 : 0,
      short: 0,
      stations: stakesM.map((chainageM, k): StationChance => {
        const overLimit = over[k] ? 1 : 0;
        return { chainageM, overLimit, short: 0, either: overLimit };
      }),
      surveyFirst: [],
    };
  }
  const low = cutWalk(samples, ground, built, waterSide, -REACH_RMSE * model.rmseM);
  const reachM = reachOf(low);
  const strip = stripGround(samples, ground, reachM);
  const tried = { ...inputs, walked, model, cellM, reachM, strip, stretches };
  const usedM3 = volumesOf(stretches, samples, cuts);
  const fields = tryFields({ ...tried, readings, count: FIELDS, usedM3 });
  const isRead = (atM: number) => onLine.some(({ chainageM }) => Math.abs(chainageM - atM) < 0.3);
  const toSurvey = stations.filter(
    ({ chainageM, groundM }) => groundM !== null && !isRead(chainageM),
  );
  const estimated = toSurvey.map(
    ({ chainageM }): ErrorReading => ({ chainageM, errorM: fields.estimateAt(chainageM) }),
  );
  const surveyedAll =
    toSurvey.length === 0
      ? null
      : tryFields({
          ...{ ...tried, readings: [...readings, ...estimated], count: FIELDS_SURVEYED, usedM3 },
        });
  const chances = stakesM.map((chainageM, k): StationChance => {
    const share = (counts: Uint32Array) => counts[k]! / FIELDS;
    return {
      chainageM,
      ...{
        overLimit: share(fields.over),
        short: share(fields.short),
        either: share(fields.either),
      },
    };
  });
  return {
    ...common,
    fields: FIELDS,
    expected: { bags: mean(fields.bags), order: mean(fields.order) },
    oneInTwo: countsEnough(fields, 0.5),
    nineInTen: countsEnough(fields, 0.9),
    nineInTenSurveyed: surveyedAll && countsEnough(surveyedAll, 0.9),
    overLimit: fields.anyOver / FIELDS,
    short: fields.order.filter((order) => order > used.order).length / FIELDS,
    stations: chances,
    surveyFirst: whereToSurvey({
      ...{ line, model, readings: onLine, chances },
      canSurvey: stations.map(({ chainageM, groundM }) => groundM !== null && !isRead(chainageM)),
      m3PerM: sensitivities(inputs, walked, model, stretches),
    }),
  };
}

interface Tried extends LineOnGround {
  readonly walked: WalkedLine;
  readonly model: ErrorModel;
  readonly cellM: number;
  readonly reachM: number;
  readonly strip: StripGround;
  readonly stretches: Stretches;
  readonly readings: readonly ErrorReading[];
  readonly count: number;
  /** Fill counted for each station's stretch on the ground as used. */
  readonly usedM3: Float64Array;
}

/** What came of the fields: bags of each, and how often what was at each station. */
interface FieldCounts {
  readonly bags: Float64Array;
  readonly order: Float64Array;
  readonly over: Uint32Array;
  readonly short: Uint32Array;
  readonly either: Uint32Array;
  readonly anyOver: number;
  /** Estimated error of the elevation data at a chainage, metres. */
  estimateAt(chainageM: number): number;
}

function tryFields(tried: Tried): FieldCounts {
  const { plan, ground, strip, walked, model, cellM, reachM, stretches, readings, count } = tried;
  const { samples, built, waterSide, line } = walked;
  const errors = lineErrors({ line, model, cellM, reachM, readings, seed: SEED });
  const field = fieldGround(samples, ground, strip, errors);
  const cuts = emptyCutWalk(samples, built);
  const { raiseM } = field;
  const at = {
    groundAt: field.at,
    builtAt: (sample: number) => {
      const reach = built[cuts.reach[sample]!]!;
      return reach.section.earlierInto ? withWaterHigher(reach, -raiseM[sample]!) : reach;
    },
    raiseAt: (sample: number) => raiseM[sample]!,
    waterSide,
  };
  const bags = new Float64Array(count);
  const order = new Float64Array(count);
  const over = new Uint32Array(stretches.count);
  const short = new Uint32Array(stretches.count);
  const either = new Uint32Array(stretches.count);
  const enough = 1 + plan.practice.spareShare;
  let anyOver = 0;
  for (let pair = 0; 2 * pair < count; pair++) {
    const departure = errors.draw();
    for (const sign of [1, -1] as const) {
      field.set(departure, sign);
      cutInto(cuts, samples, at);
      const counted = countsOf(bagsOf(samples, cuts, plan));
      const k = 2 * pair + (sign === 1 ? 0 : 1);
      bags[k] = counted.bags;
      order[k] = counted.order;
      const isOver = whereOver(stretches, cuts);
      const takenM3 = volumesOf(stretches, samples, cuts);
      if (isOver.some(Boolean)) anyOver++;
      for (let s = 0; s < stretches.count; s++) {
        const isShort = takenM3[s]! > enough * tried.usedM3[s]! + LEAST_M3;
        if (isOver[s]) over[s]!++;
        if (isShort) short[s]!++;
        if (isOver[s] || isShort) either[s]!++;
      }
    }
  }
  return { bags, order, over, short, either, anyOver, estimateAt: errors.estimateAt };
}

/** Fill that nobody notices, m3. */
const LEAST_M3 = 1e-6;

function countsOf(totals: Pick<Totals, "bags" | "bagsPlaced" | "sheetBags">): BagCounts {
  return { bags: totals.bags, order: bagOrder(totals).total };
}

/** The least counts that are enough on a share of the fields. */
function countsEnough({ bags, order }: FieldCounts, share: number): BagCounts {
  return { bags: enoughFor(bags, share), order: enoughFor(order, share) };
}

function enoughFor(counts: Float64Array, share: number): number {
  const rising = counts.toSorted();
  return rising[Math.max(0, Math.ceil(share * rising.length) - 1)]!;
}

function mean(counts: Float64Array): number {
  return Math.round(counts.reduce((sum, count) => sum + count, 0) / counts.length);
}

function reachOf({ toeLeftM, toeRightM }: CutWalk): number {
  let farthestM = 0;
  for (const toes of [toeLeftM, toeRightM]) {
    for (const toeM of toes) if (toeM > farthestM) farthestM = toeM;
  }
  return Math.min(farthestM, FARTHEST_M);
}

/** Fill that each station's stretch takes more for each metre that all of its ground is lower, m3 per m. */
function sensitivities(
  { ground }: LineOnGround,
  { samples, built, waterSide }: WalkedLine,
  { rmseM }: ErrorModel,
  stretches: Stretches,
): Float64Array {
  const [lowM3, highM3] = [-rmseM, rmseM].map((shiftM) => {
    const shifted = built.map((reach) => withWaterHigher(reach, -shiftM));
    return volumesOf(stretches, samples, cutWalk(samples, ground, shifted, waterSide, shiftM));
  }) as [Float64Array, Float64Array];
  return lowM3.map((m3, s) => (m3 - highM3[s]!) / (2 * rmseM));
}
