import { EMPTY_PLAN, holdingOf, timeOf } from "./defaults.ts";
import type { Plan } from "./plan.ts";

/**
 * A plan for another building on the same river: ground, gauge, water, forecast, crew, levee type, and the culverts,
 * drains and roads that are there stay; buildings, lines, no-go areas and when to leave are the former building's own.
 */
export function planForNext(now: Plan): Plan {
  const { sources, culverts, drains, possibleCulverts, roads } = now;
  const { gauge, flow, water, ground, section, practice, terrain } = now;
  const [holding, time] = [holdingOf(now), timeOf(now)];
  return {
    ...EMPTY_PLAN,
    ...(sources ? { sources } : {}),
    ...(culverts ? { culverts } : {}),
    ...(drains ? { drains } : {}),
    ...(possibleCulverts ? { possibleCulverts } : {}),
    ...(roads ? { roads } : {}),
    ...{ gauge, flow, water, ground, section, practice, holding, time, terrain },
  };
}
