import { FOOT_M } from "../constants.ts";
import type { Plan } from "../plan.ts";
import type { LineTime, StageCurve } from "../time/types.ts";
import { formatCount, formatLength, type UnitSystem } from "../units.ts";
import { listed } from "./list.ts";
import { levelWords } from "./time.ts";
import type { Units } from "./units.ts";

/** `next foot` or `next 0.30 m`. */
export function nextFootName({ system, length }: Units): string {
  return system === "us" ? "next foot" : `next ${length(FOOT_M)}`;
}

/** `The next foot of water costs 4,100 bags and puts 60 ft over the height limit.` */
export function nextFootWords({ nextFoot }: StageCurve, units: Units): string {
  if (!nextFoot) return "The line is far higher than any sandbag levee: check the water.";
  const { bags, overLimitM, earthM3, looseSandM3, hasGaps } = nextFoot;
  const cost = `The ${nextFootName(units)} of water costs ${formatCount(bags)} bags`;
  const over = overLimitM >= 0.5 ? units.distance(overLimitM) : "nothing more";
  const more = [
    earthM3 > 0 && `${units.volume(earthM3)} of earth`,
    looseSandM3 > 0 && `${units.volume(looseSandM3)} of loose sand`,
  ].filter((words) => words !== false);
  return [
    `${cost} and puts ${over} over the height limit.`,
    ...(more.length > 0 ? [`It takes ${listed(more)} as well.`] : []),
    ...(hasGaps ? ["Stretches without elevation data are not in it."] : []),
  ].join(" ");
}

/** At which level the greatest height reaches the limit. */
export function limitReachedWords(of: Plan, { curve }: LineTime, system: UnitSystem): string {
  const now = curve.points.find(({ riseM }) => riseM === 0)!;
  const limit = formatLength(of.practice.limitM, system);
  if (curve.limitRiseM !== null) {
    const level = levelWords(of, now.waterM + curve.limitRiseM, system);
    const isPast = curve.limitRiseM < 0;
    return `The highest place ${isPast ? "passed" : "reaches"} the height limit of ${limit} at ${level}${isPast ? " already" : ""}.`;
  }
  return now.greatestHeightM > of.practice.limitM
    ? `The highest place is over the height limit of ${limit} at every level shown.`
    : `The highest place stays within the height limit of ${limit} at every level shown.`;
}
