import type { Plan } from "../../shared/plan.ts";
import type { CurvePoint, LineTime } from "../../shared/time/types.ts";
import { lengthIn, type UnitSystem } from "../../shared/units.ts";
import { shownLevelM } from "../../shared/words/time.ts";
import { linearScale } from "./linear-scale.ts";

interface Placed {
  readonly xPx: number;
  readonly yPx: number;
}

/** Bags against the water, laid out for drawing. */
export interface CurveFrame {
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly curve: string;
  readonly points: readonly Placed[];
  /** The water that the plan is sized for. */
  readonly now: Placed;
  readonly crests: readonly (Placed & { readonly label: string })[];
  /** Where the greatest height reaches the limit; null outside the curve. */
  readonly limitX: number | null;
  readonly levels: readonly { readonly xPx: number; readonly label: string }[];
  readonly bags: readonly { readonly yPx: number; readonly label: string }[];
}

interface FrameRequest {
  readonly plan: Plan;
  readonly time: LineTime;
  readonly system: UnitSystem;
  readonly widthPx: number;
  readonly heightPx: number;
}

const LEFT_PX = 46;
const RIGHT_PX = 10;
const TOP_PX = 14;
const BOTTOM_PX = 20;
const THOUSAND = 1000;

/** Lays out the curve; null where it has but one point. */
export function curveFrame({
  plan,
  time,
  system,
  widthPx,
  heightPx,
}: FrameRequest): CurveFrame | null {
  const { points, limitRiseM } = time.curve;
  if (points.length < 2) return null;
  const plot = {
    left: LEFT_PX,
    right: widthPx - RIGHT_PX,
    top: TOP_PX,
    bottom: heightPx - BOTTOM_PX,
  };
  const shown = (waterM: number) => lengthIn(shownLevelM(plan, waterM), system);
  const all = [...points, ...time.crests];
  const ends = (pick: (point: CurvePoint) => number) =>
    [Math.min(...all.map(pick)), Math.max(...all.map(pick))] as const;
  const x = linearScale(
    ends(({ waterM }) => shown(waterM)),
    [plot.left, plot.right],
  );
  const y = linearScale([0, ends(({ bags }) => bags)[1]], [plot.bottom, plot.top], 4);
  const place = ({ waterM, bags }: CurvePoint) => ({ xPx: x(shown(waterM)), yPx: y(bags) });
  const now = points.find(({ riseM }) => riseM === 0)!;
  const placed = points.map(place);
  return {
    plot,
    curve: `M${placed.map(({ xPx, yPx }) => `${xPx.toFixed(1)} ${yPx.toFixed(1)}`).join("L")}`,
    points: placed,
    now: place(now),
    crests: time.crests.map((crest) => ({ ...place(crest), label: crest.band })),
    limitX: limitRiseM === null ? null : x(shown(now.waterM + limitRiseM)),
    levels: x.ticks(5).map((level) => ({ xPx: x(level), label: `${level}` })),
    bags: y
      .ticks(4)
      .filter((bags) => bags > 0)
      .map((bags) => ({
        yPx: y(bags),
        label: bags >= THOUSAND ? `${bags / THOUSAND} k` : `${bags}`,
      })),
  };
}
