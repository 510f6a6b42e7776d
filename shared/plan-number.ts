import type { Alignment, Plan } from "./plan.ts";
import type { SizedLine } from "./sizing-types.ts";
import { surveyOf } from "./survey/leveling.ts";

/** Degrees and metres are compared to about a millimetre, so that a plan read back from its file is the same. */
const DEGREE_DIGITS = 8;
const GROUND_DIGITS = 3;
const FIGURE_DIGITS = 9;

const FNV_PRIME = 0x01000193;
const FNV_START = 0x811c9dc5;
const NUMBER_BITS = 24;

/**
 * The number of a plan with its benchmark and backsight, which the rod readings of its stakes follow from: what its
 * pages are known by. Without either it is {@link builtNumber}.
 */
export function planNumber(
  plan: Plan,
  alignment: Alignment,
  line: Pick<SizedLine, "walk">,
): string {
  const { benchmark, backsightM } = surveyOf(plan);
  const built = builtNumber(plan, alignment, line);
  if (!benchmark && backsightM === null) return built;
  return numberOf({ built, benchmarkM: benchmark?.elevationM ?? null, backsightM });
}

/**
 * `7F3A-21`: the number by which what is built is known as of this plan; setting the level up again leaves it as it was.
 * It is made of the line, where it is left open, the ground under it, the water, the levee type and the bags; any of them
 * changed gives another number, and the former plan its former one. Units play no part, nor how the ground's error is made
 * up; a correction of the ground is in the ground under the line. 32-bit FNV-1a folded to 24 bits, as its authors propose
 * for short hashes.
 */
export function builtNumber(
  plan: Plan,
  { kind, corners, reachBreaksM, reachSections, closures }: Alignment,
  { walk }: Pick<SizedLine, "walk">,
): string {
  const { water, flow, section, practice } = plan;
  const {
    biasShare: _,
    correlatedShare: _alike,
    rangeM: _range,
    correctionM: _by,
    ...ground
  } = plan.ground;
  const { limitM, spareShare } = practice;
  const openM = closures?.length ? closures.map(({ fromM, toM }) => [fromM, toM]) : undefined;
  return numberOf({
    line: { kind, corners: degrees(corners), reachBreaksM, openM },
    ground: { ...ground, underM: Array.from(walk.groundM, millimetres) },
    water: { ...water, flow: flow && degrees([flow.from, flow.to]) },
    built: { section, reachSections, limitM, spareShare },
  });
}

/** A number in the same form for anything else that is printed, made of all that its paper says. */
export function numberOf(value: unknown): string {
  const hash = fnv1a(written(value));
  const folded = ((hash >>> NUMBER_BITS) ^ hash) & (2 ** NUMBER_BITS - 1);
  const digits = folded.toString(16).toUpperCase().padStart(6, "0");
  return `${digits.slice(0, 4)}-${digits.slice(4)}`;
}

function degrees(places: readonly (readonly number[])[]): string[][] {
  return places.map((at) => at.map((value) => value.toFixed(DEGREE_DIGITS)));
}

function millimetres(m: number): string | null {
  return Number.isNaN(m) ? null : m.toFixed(GROUND_DIGITS);
}

/** JSON with its keys in order, without what is left out, figures to nine digits. */
function written(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) => {
    if (typeof each === "number") return Number(each.toPrecision(FIGURE_DIGITS));
    if (typeof each !== "object" || each === null || Array.isArray(each)) return each;
    return Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}

function fnv1a(text: string): number {
  let hash = FNV_START;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, FNV_PRIME);
  return hash >>> 0;
}
