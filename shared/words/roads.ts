import { momentOf } from "../time/forecast-time.ts";
import { formatElevation, formatLength, type UnitSystem } from "../units.ts";
import { momentWords } from "./clock.ts";

interface Flood {
  readonly road: string;
  readonly elevationM: number;
  readonly stageM: number | null;
  readonly hour: string | null;
  readonly fromStart: boolean;
}

/** `Exit road "North road" floods above stage 29.1 ft, Wed Apr 8, 08:00`; where that is the forecast's start, that it is under water. */
export function roadFloodWords({ road, fromStart, ...flood }: Flood, system: UnitSystem): string {
  if (fromStart) {
    const { hour, ...level } = flood;
    const moment = hour === null ? null : momentOf(hour);
    const when = moment ? `, ${momentWords(moment, true, system)}` : "";
    return `Exit road "${road}" is under water from the forecast's start on${when}: it floods above ${floodLevelWords({ ...level, hour: null }, system)}`;
  }
  return `Exit road "${road}" floods above ${floodLevelWords(flood, system)}`;
}

/** `stage 29.1 ft, Wed Apr 8, 08:00`; without the hour where the forecast gives none. */
function floodLevelWords(
  { elevationM, stageM, hour }: Omit<Flood, "road" | "fromStart">,
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
