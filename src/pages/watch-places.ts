import { factorWords } from "../../shared/holding/factor-words.ts";
import type { Holding } from "../../shared/holding/types.ts";
import type { LonLat } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, type UnitSystem } from "../../shared/units.ts";
import type { TracedAlternative } from "../../shared/water-types.ts";
import { LEFT_OPEN } from "../../shared/words/closures.ts";
import { culvertStopWords } from "../../shared/words/pipes.ts";
import { spotAt } from "../drawing/line/along.ts";

/** Places nearer to each other than this are one stop of a patrol, metres. Source: judgement. */
const ONE_STOP_M = 5;

/** Stops of a round on the page and in its log, where no culverts ask for more. */
const MOST_STOPS = 4;

/** A stop of the patrol, and why. */
export interface WatchPlace {
  readonly chainageM: number;
  readonly at: LonLat;
  readonly reasons: readonly string[];
  readonly comesFirst: boolean;
}

interface Reason {
  readonly chainageM: number;
  readonly why: string;
  /** True for a stop that no round may leave out. */
  readonly comesFirst?: boolean;
}

/** Where a patrol stops, in order of chainage: the weakest, the wettest, the highest, and where water comes in first. */
export function watchPlaces(
  line: SizedLine,
  holding: Holding,
  traced: TracedAlternative | null,
  system: UnitSystem,
): WatchPlace[] {
  const found: Reason[] = [
    ...ofStanding(holding),
    ...ofWater(line, holding, system),
    ...ofTrace(traced),
    ...ofCulverts(line),
    ...line.checks
      .filter(({ id }) => id === "closure")
      .map(({ fromM }) => ({ chainageM: fromM, why: LEFT_OPEN, comesFirst: true })),
    ...line.stations
      .filter(({ reason }) => reason === "gap")
      .map(({ chainageM }) => ({ chainageM, why: "no elevation data here: judge it by eye" })),
  ];
  const reasons = found.sort((a, b) => a.chainageM - b.chainageM);
  const stops: { chainageM: number; reasons: string[]; comesFirst: boolean }[] = [];
  for (const { chainageM, why, comesFirst = false } of reasons) {
    const last = stops.at(-1);
    if (!last || chainageM - last.chainageM > ONE_STOP_M) {
      stops.push({ chainageM, reasons: [why], comesFirst });
      continue;
    }
    if (!last.reasons.includes(why)) last.reasons.push(why);
    last.comesFirst ||= comesFirst;
  }
  return mostOf(stops).flatMap((stop) => {
    const spot = spotAt(line.walk, stop.chainageM);
    return spot ? [{ ...stop, at: [spot.at[0], spot.at[1]] as LonLat }] : [];
  });
}

/** The stops that a round has room for, those that come first among them, in order of chainage. */
function mostOf<Stop extends { readonly comesFirst: boolean; readonly chainageM: number }>(
  stops: readonly Stop[],
): Stop[] {
  const first = stops.filter(({ comesFirst }) => comesFirst);
  const others = stops.filter(({ comesFirst }) => !comesFirst);
  const room = Math.max(0, MOST_STOPS - first.length);
  return [...first, ...others.slice(0, room)].sort((a, b) => a.chainageM - b.chainageM);
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

/** Where the line crosses a culvert, plugged or not. */
function ofCulverts({ checks }: SizedLine): Reason[] {
  return checks.flatMap(({ fromM, finding }) => {
    const why = culvertStopWords(finding);
    return why === null ? [] : [{ chainageM: fromM, why, comesFirst: true }];
  });
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
