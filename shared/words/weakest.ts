import { factorWords } from "../holding/factor-words.ts";
import { GRAVENESS } from "../holding/line-verdict.ts";
import type { Standing, Verdict, Weakest } from "../holding/types.ts";
import { formatLength, formatStation, type UnitSystem } from "../units.ts";

/** A place where a line is weakest, in words. */
export interface WeakestPlace {
  readonly chainageM: number;
  readonly verdict: Verdict;
  /** "sliding 1.0 to 2.1, 1.5 required". */
  readonly label: string;
  /** "sliding 1.0 to 2.1". */
  readonly short: string;
  /** Factors, what is required of them, and what the verdict means, as sentences. */
  readonly text: string;
}

interface Way extends Weakest {
  readonly name: "sliding" | "overturning";
}

/** Places nearer to each other than this are one, metres. */
const SAME_PLACE_M = 1;

/** Where a line is weakest against sliding and against overturning: one place or two, the graver first. */
export function weakestPlaces(
  standing: Standing | null | undefined,
  system: UnitSystem,
): readonly WeakestPlace[] {
  if (!standing) return [];
  const ways: readonly [Way, Way] = [
    { name: "sliding", ...standing.sliding },
    { name: "overturning", ...standing.overturning },
  ];
  const [graver, other] = graverFirst(ways);
  const isOne = Math.abs(graver.chainageM - other.chainageM) < SAME_PLACE_M;
  const places = isOne ? [[graver, other]] : [[graver], [other]];
  return places.map((here) => placeOf(here, system));
}

function graverFirst([a, b]: readonly [Way, Way]): readonly [Way, Way] {
  return GRAVENESS[b.verdict] > GRAVENESS[a.verdict] ? [b, a] : [a, b];
}

function placeOf(ways: readonly Way[], system: UnitSystem): WeakestPlace {
  const first = ways[0]!;
  const { chainageM, verdict } = first;
  const sentences = ways.map((way) => sentence(way, system));
  const short = `${first.name} ${factorWords(first.factor)}`;
  return {
    ...{ chainageM, verdict, short },
    label: `${short}, ${first.required} required`,
    text: `At ${formatStation(chainageM, system)}, with ${formatLength(first.waterDepthM, system)} of water against it. ${sentences.join(" ")}`,
  };
}

function sentence(way: Way, system: UnitSystem): string {
  const { name, required, lengthShortM, verdict } = way;
  const short = lengthShortM > 0 ? `, on ${formatLength(lengthShortM, system, 0)} of line` : "";
  const means: Record<Verdict, string> = {
    "meets-required": "as required, at the friction assumed",
    doubtful:
      way.factor.low < required
        ? `below it at low friction${short}`
        : "in doubt, as part of the line is over the height limit of its levee type",
    "below-required": `below it${short}`,
  };
  const what = name === "sliding" ? "Sliding" : "Overturning";
  return `${what} calculates at ${factorWords(way.factor)}, ${required} is required: ${means[verdict]}.`;
}
