import type { Behind, BehindStretch, BuiltSoFar } from "../field/built-so-far.ts";
import type { StakedStretch } from "../field/stakes.ts";
import type { ProgressMark } from "../plan.ts";
import { formatCount, formatLength, lengthIn, type UnitSystem } from "../units.ts";
import { hourWords, momentWords } from "./clock.ts";
import { stationsWords } from "./crew-parts.ts";
import { buildStateWords } from "./field-progress.ts";

/** `125 of 860 ft`, up to height. */
export function builtShortWords({ reachedM, toBuildM }: BuiltSoFar, system: UnitSystem): string {
  const built = Math.floor(lengthIn(reachedM["to-height"], system) + 0.01);
  return `${formatCount(built)} of ${formatLength(toBuildM, system, 0)}`;
}

function whole(m: number, system: UnitSystem): string {
  return formatLength(Math.floor(m * 100) / 100, system, 0);
}

/** How much of the line reached each state, in the order of building. */
export function reachedRows(
  { reachedM, toBuildM }: BuiltSoFar,
  system: UnitSystem,
): readonly { readonly name: string; readonly value: string; readonly share: number }[] {
  return (["begun", "to-height", "poly-on", "checked"] as const).map((state) => ({
    name: buildStateWords(state),
    value: whole(reachedM[state], system),
    share: toBuildM > 0 ? reachedM[state] / toBuildM : 0,
  }));
}

/** What is said of marks made by another plan; null where there are none. */
export function otherPlanWords(
  { ofOtherPlan: count }: BuiltSoFar,
  planNumber: string,
): string | null {
  if (count === 0) return null;
  const marks = count === 1 ? "1 mark is" : `${count} marks are`;
  return `${marks} of another plan than ${planNumber}: heights may differ, so that counts as begun and no more. Measure there and mark again.`;
}

/**
 * Against the build sequence and the water, a sentence each.
 * @param endedH when the forecast ended, hours from the start of work; null while it goes on, or without one
 */
export function behindWords(
  { late, noHour, inWater, noGround, next }: Behind,
  startAt: string | null,
  endedH: number | null,
  system: UnitSystem,
): readonly string[] {
  return [
    lateWords(late, noHour.length > 0, system),
    ...(noHour.length > 0 ? [`No hour in the build sequence: ${listWords(noHour, system)}.`] : []),
    inWater === null
      ? noWaterWords(startAt, endedH, system)
      : inWaterWords(inWater, noGround.length > 0, system),
    ...(noGround.length > 0
      ? [
          `No elevation data, so whether water is there is not known: ${listWords(noGround, system)}.`,
        ]
      : []),
    ...(next ? [nextWetWords(next, startAt, system)] : []),
  ];
}

function noWaterWords(startAt: string | null, endedH: number | null, system: UnitSystem): string {
  if (endedH === null) return "No forecast: where the water is, is not known.";
  return `The forecast ended ${hourWords(startAt, endedH, system, { long: true })}. Get a new one: where the water is, is not known.`;
}

function lateWords(
  late: readonly BehindStretch[] | null,
  hasNoHour: boolean,
  system: UnitSystem,
): string {
  if (late === null) return "No build sequence: people, start of work and shifts are not all set.";
  if (late.length > 0)
    return `Behind the build sequence at the slow pace: ${listWords(late, system)}. Tell the command post now.`;
  return hasNoHour
    ? "Nothing that has an hour in the build sequence is behind it at the slow pace."
    : "Nothing is behind the build sequence at the slow pace.";
}

function inWaterWords(
  inWater: readonly BehindStretch[],
  isPartKnown: boolean,
  system: UnitSystem,
): string {
  if (inWater.length === 0)
    return `By the likely forecast no water is yet at ${isPartKnown ? "the known ground" : "ground"} that is not up to height.`;
  return `By the likely forecast water is at the ground and the levee is not up to height: ${listWords(inWater, system)}. Keep out of moving water.`;
}

function nextWetWords(
  { stretch, wetH }: BehindStretch,
  startAt: string | null,
  system: UnitSystem,
): string {
  const when = hourWords(startAt, wetH!, system);
  return `Next by the likely forecast: ${stationsWords(stretch, system)}, water at its ground ${when}.`;
}

/** Work that the plan has yet to start. */
export function notStartedWords(startAt: string, system: UnitSystem): string {
  return `Work starts ${hourWords(startAt, 0, system, { long: true })} by the plan.`;
}

const MOST_NAMED = 4;

/** Stretches along the line with those that follow each other as one. */
function joinedStretches(stretches: readonly StakedStretch[]): readonly StakedStretch[] {
  const joined: StakedStretch[] = [];
  for (const { fromM, toM } of stretches) {
    const last = joined.at(-1);
    if (last && last.toM === fromM) joined[joined.length - 1] = { fromM: last.fromM, toM };
    else joined.push({ fromM, toM });
  }
  return joined;
}

function listWords(list: readonly BehindStretch[], system: UnitSystem): string {
  const joined = joinedStretches(list.map(({ stretch }) => stretch));
  const named = joined.slice(0, MOST_NAMED).map((stretch) => stationsWords(stretch, system));
  const more = joined.length - named.length;
  return more > 0 ? `${named.join(", ")} and ${more} more` : named.join(", ");
}

/** When a stretch was marked and by whom: `Up to height, Wed 11:05, Ana`. */
export function markWords(mark: ProgressMark, offsetMin: number, system: UnitSystem): string {
  const when = momentWords({ atS: mark.atS, offsetMin }, false, system);
  const cleared = mark.clearedBy === "" ? [] : [`Must fix cleared by ${mark.clearedBy}`];
  return [buildStateWords(mark.state), when, ...(mark.by === "" ? [] : [mark.by]), ...cleared].join(
    ", ",
  );
}

/** A size of a kept photo: `184 kB`. */
export function photoSizeWords(bytes: number): string {
  return `${Math.max(1, Math.round(bytes / 1000))} kB on this device, not in the plan file`;
}

export const PHOTO_ELSEWHERE = "Its photo is on the device that took it.";

/** What came in from another plan or phone. */
export function addedWords(count: number): string {
  return count === 0
    ? "Nothing new: all of it was here."
    : `${count === 1 ? "1 mark" : `${count} marks`} added.`;
}
