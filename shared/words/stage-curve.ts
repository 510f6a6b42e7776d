import { FOOT_M } from "../constants.ts";
import type { StageCurve } from "../time/types.ts";
import { formatCount } from "../units.ts";
import { listed } from "./list.ts";
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
