import type { Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { riverClock } from "../time/river-clock.ts";

/**
 * Water surface outside so many hours after the highest water of the likely forecast, metres: never above the
 * water the line is sized for, which it is without a forecast and after a forecast's end.
 * @param waterM the sized-for water at the place looked at
 */
export function outsideAfter(plan: Plan, waterM: number): (hours: number) => number {
  const river = riverClock(plan);
  if (!river) return () => waterM;
  const designM = waterElevationAtGauge(plan.water);
  return (hours) => {
    const levelM = river.levelAtH(river.crestH + hours);
    return Number.isNaN(levelM) ? waterM : Math.min(waterM, waterM + levelM - designM);
  };
}
