import { factorWords } from "../../shared/holding/factor-words.ts";
import type { Holding } from "../../shared/holding/types.ts";
import type { LonLat } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, type UnitSystem } from "../../shared/units.ts";
import type { TracedAlternative } from "../../shared/water-types.ts";
import { spotAt } from "../drawing/line/along.ts";

/** Places nearer to each other than this are one stop of a patrol, metres. Source: judgement. */
const ONE_STOP_M = 5;

/** A stop of the patrol, and why. */
export interface WatchPlace {
  readonly chainageM: number;
  readonly at: LonLat;
  readonly reasons: readonly string[];
}

interface Reason {
  readonly chainageM: number;
  readonly why: string;
}

/** Where a patrol stops, in order of chainage: the weakest, the wettest, the highest, and where water comes in first. */
export function watchPlaces(
  line: SizedLine,
  holding: Holding,
  traced: TracedAlternative | null,
  system: UnitSystem,
): WatchPlace[] {
  const reasons = [
    ...ofStanding(holding),
    ...ofWater(line, holding, system),
    ...ofTrace(traced),
    ...line.stations
      .filter(({ reason }) => reason === "gap")
      .map(({ chainageM }) => ({ chainageM, why: "no elevation data here: judge it by eye" })),
  ].sort((a, b) => a.chainageM - b.chainageM);
  const stops: { chainageM: number; reasons: string[] }[] = [];
  for (const { chainageM, why } of reasons) {
    const last = stops.at(-1);
    if (!last || chainageM - last.chainageM > ONE_STOP_M) stops.push({ chainageM, reasons: [why] });
    else if (!last.reasons.includes(why)) last.reasons.push(why);
  }
  return stops.flatMap((stop) => {
    const spot = spotAt(line.walk, stop.chainageM);
    return spot ? [{ ...stop, at: [spot.at[0], spot.at[1]] as LonLat }] : [];
  });
}

function ofStanding({ standing }: Holding): Reason[] {
  if (!standing) return [];
  const { sliding, overturning } = standing;
  const words = (way: string, of: typeof sliding) =>
    `weakest against ${way}: ${factorWords(of.factor)}, ${of.required} required`;
  return [
    { chainageM: sliding.chainageM, why: words("sliding", sliding) },
    { chainageM: overturning.chainageM, why: words("overturning", overturning) },
  ];
}

function ofWater(line: SizedLine, holding: Holding, system: UnitSystem): Reason[] {
  const { seepage, exit } = holding;
  const { greatestHeightM, greatestHeightAtM } = line.totals;
  const deepest = deepestAt(line, holding);
  return [
    ...(greatestHeightM > 0
      ? [{ chainageM: greatestHeightAtM, why: `highest, ${formatLength(greatestHeightM, system)}` }]
      : []),
    ...(deepest
      ? [
          {
            chainageM: deepest.chainageM,
            why: `deepest water, ${formatLength(deepest.depthM, system)}`,
          },
        ]
      : []),
    ...(seepage.worstM === null ? [] : [{ chainageM: seepage.worstM, why: "most seepage" }]),
    ...(exit
      ? [{ chainageM: exit.atM, why: "boils most likely here, behind the landside toe" }]
      : []),
  ];
}

function deepestAt({ walk }: SizedLine, { profile }: Holding) {
  let found: { chainageM: number; depthM: number } | null = null;
  profile.waterDepthM.forEach((depthM, i) => {
    if (depthM > (found?.depthM ?? 0)) found = { chainageM: walk.chainageM[i]!, depthM };
  });
  return found as { readonly chainageM: number; readonly depthM: number } | null;
}

function ofTrace(traced: TracedAlternative | null): Reason[] {
  const { wayIn, firstOver } = traced ?? {};
  return [
    ...(wayIn ? [{ chainageM: wayIn.chainageM, why: "water comes in here: close it first" }] : []),
    ...(firstOver
      ? [
          {
            chainageM: firstOver.chainageM,
            why: `first place a higher river goes over the ${firstOver.over === "crest" ? "top of levee" : "ground"}`,
          },
        ]
      : []),
  ];
}
