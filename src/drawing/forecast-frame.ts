import { DAY_H, HOUR_S } from "../../shared/constants.ts";
import { timeOf } from "../../shared/defaults.ts";
import type { Plan } from "../../shared/plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../../shared/stage.ts";
import { midnights } from "../../shared/time/clock.ts";
import { type Band, hydrographOf } from "../../shared/time/hydrograph.ts";
import { type RiverClock, riverClock } from "../../shared/time/river-clock.ts";
import { lengthIn, type UnitSystem } from "../../shared/units.ts";
import { dayWords } from "../../shared/words/clock.ts";
import { shownLevelM } from "../../shared/words/time.ts";
import { type LinearScale, linearScale } from "./linear-scale.ts";

/** A forecast laid out for drawing: places in pixels from the upper left corner. */
export interface ForecastFrame {
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly x: (hour: number) => number;
  /** Place of a water-surface elevation at the gauge, metres. */
  readonly y: (elevationM: number) => number;
  readonly likely: string;
  /** Low and high as one closed shape; null where the forecast has not got both. */
  readonly band: string | null;
  readonly days: readonly { readonly xPx: number; readonly label: string }[];
  readonly levels: readonly { readonly yPx: number; readonly label: string }[];
  readonly designM: number | null;
}

interface FrameRequest {
  readonly plan: Plan;
  readonly system: UnitSystem;
  readonly widthPx: number;
  readonly heightPx: number;
}

const LEFT_PX = 34;
const RIGHT_PX = 8;
const TOP_PX = 18;
/** Under the plot: a lane for the work, then the days. */
const BOTTOM_PX = 34;
const DAY_PX = 44;
const LEVEL_TICKS = 5;

/** Lays out a plan's forecast with the water it is sized for; null without a forecast. */
export function forecastFrame({
  plan,
  system,
  widthPx,
  heightPx,
}: FrameRequest): ForecastFrame | null {
  const river = riverClock(plan);
  const { forecast } = timeOf(plan);
  if (!river || !forecast) return null;
  const plot = {
    left: LEFT_PX,
    right: widthPx - RIGHT_PX,
    top: TOP_PX,
    bottom: heightPx - BOTTOM_PX,
  };
  const bandOf = (band: Band) => hydrographOf(plan, forecast, band);
  const [low, likely, high] = [bandOf("low"), bandOf("likely")!, bandOf("high")];
  const designM = isWaterGiven(plan.water) ? waterElevationAtGauge(plan.water) : null;
  const all = [
    ...[low, likely, high].flatMap((each) => (each ? [...each.levelM] : [])),
    ...(designM === null ? [] : [designM]),
  ];
  const shown = (elevationM: number) => lengthIn(shownLevelM(plan, elevationM), system);
  const scaleX = linearScale([Math.min(0, river.fromH), river.toH], [plot.left, plot.right]);
  const scaleY = linearScale(
    [shown(Math.min(...all)), shown(Math.max(...all))],
    [plot.bottom, plot.top],
    LEVEL_TICKS,
  );
  const y = (elevationM: number) => scaleY(shown(elevationM));
  const hours = Array.from(likely.atS, (atS) => (atS - river.start.atS) / HOUR_S);
  const points = (levelM: Float64Array) =>
    hours.map((hour, i) => `${px(scaleX(hour))} ${px(y(levelM[i]!))}`);
  return {
    plot,
    x: (hour) => scaleX(hour),
    y,
    likely: `M${points(likely.levelM).join("L")}`,
    band:
      low && high
        ? `M${[...points(high.levelM), ...points(low.levelM).reverse()].join("L")}Z`
        : null,
    days: dayTicks(river, scaleX),
    levels: scaleY.ticks(LEVEL_TICKS).map((level) => ({ yPx: scaleY(level), label: `${level}` })),
    designM,
  };
}

/** Midnights on the forecast's own clock, as many as have room. */
function dayTicks({ start, fromH, toH }: RiverClock, x: LinearScale) {
  const perDayPx = x(DAY_H) - x(0);
  const every = Math.max(1, Math.ceil(DAY_PX / perDayPx));
  const at = midnights(start, start.atS + fromH * HOUR_S, start.atS + toH * HOUR_S, every);
  return at.map((atS) => ({
    xPx: x((atS - start.atS) / HOUR_S),
    label: dayWords({ ...start, atS }),
  }));
}

function px(value: number): string {
  return value.toFixed(1);
}
