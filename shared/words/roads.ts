import { momentOf } from "../time/forecast-time.ts";
import { formatElevation, formatLength, type UnitSystem } from "../units.ts";
import { momentWords } from "./clock.ts";

interface Flood {
  readonly road: string;
  readonly elevationM: number;
  readonly stageM: number | null;
  readonly hour: string | null;
}

/** `Exit road "North road" floods above stage 29.1 ft, Wed Apr 8, 08:00`. */
export function roadFloodWords({ road, ...flood }: Flood, system: UnitSystem): string {
  return `Exit road "${road}" floods above ${floodLevelWords(flood, system)}`;
}

/** `stage 29.1 ft, Wed Apr 8, 08:00`; without the hour where the forecast gives none. */
function floodLevelWords(
  { elevationM, stageM, hour }: Omit<Flood, "road">,
  system: UnitSystem,
): string {
  const level =
    stageM === null ? formatElevation(elevationM, system) : `stage ${formatLength(stageM, system)}`;
  const moment = hour === null ? null : momentOf(hour);
  return moment ? `${level}, ${momentWords(moment, true, system)}` : level;
}

/** What the list of exit roads says. */
export const ROAD_WORDS = {
  none: "Draw the way out to see when it floods: the leave stage is set by it.",
  never: "No water reaches it over the ground.",
  notKnown: "Not known when it floods.",
} as const;
