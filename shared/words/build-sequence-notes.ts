import { hasOtherSections } from "../reaches.ts";
import type { SizedLine } from "../sizing-types.ts";
import { endsBeforeTheWork, riseOverPlanM } from "../time/forecast-end.ts";
import type { LineTime } from "../time/types.ts";
import { mostWork } from "../time/ways-out.ts";
import { formatCount, formatLength, type UnitSystem } from "../units.ts";
import { besidePeople, mostWorkWords } from "./checks/time.ts";
import { gapLength } from "./ground-gap.ts";

export const LATE_STEPS = "Late steps: call the command post now.";
export const NEVER_CUT_FREEBOARD = "Never cut the freeboard to save time.";

/** What the verdict leaves out, and who reads this sheet alone must know. */
export function sequenceDoubtWords(line: SizedLine, time: LineTime, system: UnitSystem): string[] {
  const riseM = riseOverPlanM(time);
  const gap = gapLength(line, system);
  return [
    riseM > 0 &&
      `The forecast crest is ${formatLength(riseM, system)} above the sized-for water: nothing here is said of water above that.`,
    endsBeforeTheWork(time) &&
      "The forecast ends before the work does: the water after it is not known.",
    gap !== null &&
      `${gap} of the line has no elevation data: its bags and hours are in none of these times.`,
  ].filter((words) => words !== false);
}

/** What would be in time; null where nothing need be sought. @param others other lines that are, in words */
export function toBeInTimeWords(
  line: SizedLine,
  time: LineTime,
  others: readonly string[],
): string | null {
  const ways = time.waysOut;
  if (!ways) return null;
  const most = mostWork(time, !hasOtherSections(line));
  const found = [
    ...others,
    ways.people !== null && `${formatCount(ways.people)} people instead${besidePeople(ways)}`,
    ways.peopleDayAndNight !== null &&
      ways.peopleDayAndNight < (ways.people ?? Infinity) &&
      `${formatCount(ways.peopleDayAndNight)} people at work at every hour, day and night under lights, and as many again for each further shift`,
    most && `a smaller ring of at most ${mostWorkWords(most)}`,
  ].filter((words) => words !== false && words !== null);
  return found.length > 0
    ? `To be in time: ${found.join("; or ")}.`
    : "No number of people is enough: start sooner, or prepare to leave.";
}
