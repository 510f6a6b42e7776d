import type { LineSamples } from "../line-samples.ts";
import type { Plan } from "../plan.ts";
import type { EmergencySection, SectionShape } from "../sections/types.ts";
import { figuresOf, SECTIONS } from "../sections.ts";
import type { CheckContext } from "./rule.ts";
import type { Stretch } from "./stretch.ts";

/** A place on the line, as a section that is to be put there sees it; metres. */
export interface Place {
  /** Crest above the ground at the centre line. */
  readonly heightM: number;
  /** Crest above the lowest ground under the base that is there now. */
  readonly greatestM: number;
  /** Crest above the ground at either toe. */
  readonly dropWaterM: number;
  readonly dropLandM: number;
  /** From the centre line to what must be kept free on that side; Infinity where nothing stands there. */
  readonly roomWaterM: number;
  readonly roomLandM: number;
}

/** A levee type that fits everywhere along a stretch, and its widest base there. */
export interface FittingType {
  readonly typeId: string;
  readonly baseM: number;
}

/**
 * The sections whose base fits into the room at every place, at their default figures and within their limits.
 * Left out are those of `except` (what is built there now) and what needs a levee that stands already.
 */
export function fittingSections(
  places: readonly Place[],
  plan: Plan,
  except: ReadonlySet<string>,
): FittingType[] {
  return SECTIONS.flatMap((section) => {
    if (section.earlierInto || except.has(section.id)) return [];
    const baseM = widestBaseM(section, places, plan);
    return Number.isNaN(baseM) ? [] : [{ typeId: section.id, baseM }];
  });
}

/** Widest base a section would have at the places; NaN where it does not fit or is not to be built so high. */
function widestBaseM(section: EmergencySection, places: readonly Place[], plan: Plan): number {
  const figures = figuresOf(section, null, plan);
  const limitM = section.limitM ?? plan.practice.limitM;
  const shape: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
  let widestM = 0;
  for (const place of places) {
    section.shapeInto(shape, place.heightM, figures);
    const waterM = shape.crownM / 2 + shape.runWater * place.dropWaterM;
    const landM = shape.crownM / 2 + shape.runLand * place.dropLandM;
    const fits = waterM <= place.roomWaterM + 1e-9 && landM <= place.roomLandM + 1e-9;
    if (!fits || place.greatestM > limitM + 1e-9) return Number.NaN;
    widestM = Math.max(widestM, waterM + landM);
  }
  return widestM;
}

/** Samples of a stretch that a rule objects to. */
export function samplesIn(
  { chainageM, count }: LineSamples,
  { parts }: Stretch,
  is: (sample: number) => boolean,
): number[] {
  const found: number[] = [];
  for (let i = 0; i < count; i++) {
    const m = chainageM[i]!;
    if (is(i) && parts.some(({ fromM, toM }) => m >= fromM && m <= toM)) found.push(i);
  }
  return found;
}

/** What fits at some samples, when so much room is free to the left and right of the centre line there. */
export function fittingAt(
  { plan, cuts, waterSide }: CheckContext,
  those: readonly number[],
  roomM: (sample: number) => { readonly left: number; readonly right: number },
): FittingType[] {
  const places = those.map((i): Place => {
    const room = roomM(i);
    const left = { roomM: room.left, dropM: cuts.dropLeftM[i]! };
    const right = { roomM: room.right, dropM: cuts.dropRightM[i]! };
    const [water, land] = waterSide === 1 ? [left, right] : [right, left];
    return {
      heightM: cuts.heightM[i]!,
      greatestM: cuts.greatestHeightM[i]!,
      ...{ dropWaterM: water.dropM, dropLandM: land.dropM },
      ...{ roomWaterM: water.roomM, roomLandM: land.roomM },
    };
  });
  const built = new Set(those.map((i) => cuts.reaches[cuts.reach[i]!]!.section.id));
  return fittingSections(places, plan, built);
}
