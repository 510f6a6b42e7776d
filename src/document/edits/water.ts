import type { Water } from "../../../shared/plan.ts";
import { edit } from "./alternatives.ts";

/** Changes some of what is said of the water. @returns whether the plan took it */
export function changeWater(note: string, change: Partial<Water>): boolean {
  return edit({ note, change: (now) => ({ ...now, water: { ...now.water, ...change } }) });
}
