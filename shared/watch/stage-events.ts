import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { momentOf } from "../time/forecast-time.ts";
import { firstAbove, hydrographOf } from "../time/hydrograph.ts";
import type { TracedAlternative } from "../water-types.ts";

/** A level of the river at which something happens on a line. */
export interface StageEvent {
  readonly kind: "overtops" | "high-crest" | "likely-crest" | "half-wet" | "first-wet";
  /** Water at the gauge, elevation in metres. */
  readonly gaugeM: number;
  /** Where on the line; null where it is not of one place. */
  readonly chainageM: number | null;
  /** When the likely forecast gets there, `2026-04-08T11:00-05:00` in parts; null where it does not or there is none. */
  readonly likely: Moment | null;
}

type Moment = { readonly atS: number; readonly offsetMin: number | null };

/**
 * What happens at which level of the river, the highest first: the levee overtops, the forecast crests, water stands
 * along half of what is built, water can first reach what is built. A place is reached when the water surface there is
 * as high as the lowest ground under the base; whether a way leads there is not looked at, so that it is the earliest.
 */
export function stageEvents(
  plan: Plan,
  line: SizedLine,
  traced: TracedAlternative | null,
): StageEvent[] {
  const sizedM = waterElevationAtGauge(plan.water);
  const reached = timesOf(plan);
  const { first, half } = wetting(line, sizedM);
  const crest = (band: "high" | "likely") => line.time?.crests.find((each) => each.band === band);
  const crests = (["high", "likely"] as const).flatMap((band): StageEvent[] => {
    const found = crest(band);
    if (!found) return [];
    const likely = band === "likely" ? momentOf(found.at) : null;
    return [{ kind: `${band}-crest`, gaugeM: crestGaugeM(plan, band), chainageM: null, likely }];
  });
  const over = traced?.firstOver;
  return [
    ...(over
      ? [event("overtops", sizedM + over.riseM, over.chainageM, reached(sizedM + over.riseM))]
      : []),
    ...crests,
    ...(half === null ? [] : [event("half-wet", half, null, reached(half))]),
    ...(first === null ? [] : [event("first-wet", first.gaugeM, first.atM, reached(first.gaugeM))]),
  ].sort((a, b) => b.gaugeM - a.gaugeM);
}

function event(
  kind: StageEvent["kind"],
  gaugeM: number,
  chainageM: number | null,
  likely: Moment | null,
): StageEvent {
  return { kind, gaugeM, chainageM, likely };
}

function crestGaugeM(plan: Plan, band: "high" | "likely"): number {
  const { forecast } = timeOf(plan);
  return Math.max(...hydrographOf(plan, forecast!, band)!.levelM);
}

/** When the likely forecast first stands above a level; null where it never does or is not known. */
function timesOf(plan: Plan): (gaugeM: number) => Moment | null {
  const { forecast } = timeOf(plan);
  const river = forecast && hydrographOf(plan, forecast, "likely");
  if (!forecast || !river) return () => null;
  const offsetMin = momentOf(forecast.rows[0]!.at)?.offsetMin ?? null;
  const above = firstAbove(river, river.atS[0]!);
  return (gaugeM) => {
    const atS = above(gaugeM);
    return atS === null ? null : { atS, offsetMin };
  };
}

/** Level at which water can first be at what is built and where, and at which it is along half of it; metres at the gauge. */
function wetting({ walk }: SizedLine, sizedM: number) {
  const built = Array.from(walk.chainageM.keys()).filter(
    (i) => walk.heightM[i]! > 0 && !Number.isNaN(walk.lowestGroundM[i]!),
  );
  const wetM = (i: number) => sizedM - (walk.waterM[i]! - walk.lowestGroundM[i]!);
  const byLevel = built.sort((a, b) => wetM(a) - wetM(b));
  const lowest = byLevel[0];
  const middle = byLevel[Math.floor(byLevel.length / 2)];
  return {
    first: lowest === undefined ? null : { gaugeM: wetM(lowest), atM: walk.chainageM[lowest]! },
    half: middle === undefined ? null : wetM(middle),
  };
}
