import { momentOf } from "../time/forecast-time.ts";
import type { ClosureTime } from "../time/types.ts";
import { formatLength, type UnitSystem } from "../units.ts";
import { momentWords } from "./clock.ts";

/** `stage 28.5 ft` or `Wed Apr 8, 11:00`, or both: when closing begins; null where nobody has set it. */
export function closeByWords(
  { stageM, at }: Pick<ClosureTime, "stageM" | "at">,
  system: UnitSystem,
): string | null {
  const moment = at === null ? null : momentOf(at);
  const words = [
    stageM === null ? null : `stage ${formatLength(stageM, system)}`,
    moment && momentWords(moment, true, system),
  ].filter((each) => each !== null);
  return words.length > 0 ? words.join(" or ") : null;
}

/** Why a round stops at a way left open. */
export const LEFT_OPEN = "left open for vehicles: close it in time, its bags are beside it";
/** The same on a drawing. */
export const LEFT_OPEN_SHORT = "left open";
