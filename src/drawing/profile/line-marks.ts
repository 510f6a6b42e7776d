import type { Plan } from "../../../shared/plan.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import type { Overtopping, TracedAlternative, WayIn } from "../../../shared/water-types.ts";
import { overPlaceWords, wayInMarkWords } from "../../../shared/words/water-marks.ts";
import { firstPlaces } from "../../../shared/words/water-order.ts";
import { type WeakestPlace, weakestPlaces } from "../../../shared/words/weakest.ts";

/** A place on the line that the person should know, on the profile. */
export interface LineMark {
  readonly key: string;
  readonly kind: "way-in" | "weakest" | "over" | "survey" | "reading";
  readonly tone: "grave" | "caution" | "quiet";
  readonly chainageM: number;
  /** Beside it, the fullest words first; none where its shape says enough. */
  readonly texts: readonly string[];
  readonly title: string;
  /** Written in its shape. */
  readonly number: number | null;
}

const TONES = {
  "meets-required": "quiet",
  doubtful: "caution",
  "below-required": "grave",
} as const;

/**
 * Where water comes in, where the line is weakest, and where a rising river goes over it first, the gravest
 * first. `traced` is null while the water is being followed.
 */
export function lineMarks(
  line: SizedLine,
  traced: Pick<TracedAlternative, "wayIn" | "overtopping"> | null,
  plan: Plan,
  system: UnitSystem,
): readonly LineMark[] {
  const wayIn = traced?.wayIn ?? null;
  const over = traced ? firstPlaces(traced.overtopping, plan) : [];
  return [
    ...(wayIn ? [wayInMark(wayIn, system)] : []),
    ...weakestPlaces(line.holding?.standing, system).map(weakestMark),
    ...over.map((place, index) => overMark(place, index + 1, plan, system)),
  ];
}

function wayInMark(way: WayIn, system: UnitSystem): LineMark {
  return {
    ...{ key: "mark-grave-way-in", kind: "way-in", tone: "grave", number: null },
    chainageM: way.chainageM,
    ...wayInMarkWords(way, system),
  };
}

function weakestMark(place: WeakestPlace, index: number): LineMark {
  const { verdict, label, short, chainageM, text } = place;
  return {
    ...{
      key: `mark-${TONES[verdict]}-weakest-${index}`,
      kind: "weakest",
      tone: TONES[verdict],
      number: null,
    },
    chainageM,
    texts: verdict === "meets-required" ? [] : [label, short],
    title: `Lowest factor on the line. ${text}`,
  };
}

function overMark(place: Overtopping, number: number, plan: Plan, system: UnitSystem): LineMark {
  return {
    ...{ key: `mark-quiet-over-${number}`, kind: "over", tone: "quiet", texts: [], number },
    chainageM: place.chainageM,
    title: overPlaceWords(place, number, plan, system),
  };
}
