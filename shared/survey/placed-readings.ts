import { layLine, placeAt } from "../alignment.ts";
import type { Alignment, GroundReading, Plan } from "../plan.ts";
import { planSite } from "../site.ts";
import { surveyOf } from "./leveling.ts";
import type { StationReading } from "./parse-readings.ts";

/** Readings nearer to each other are of one place: the later one counts, metres. */
const ONE_PLACE_M = 0.05;

/** The plan with ground read at stations of a line and beside it; what was read at the same places before is replaced. */
export function withReadings(
  plan: Plan,
  alignment: Alignment,
  readings: readonly StationReading[],
): Plan {
  const { plane } = planSite(plan, 0);
  const line = layLine(alignment, plane);
  const placed = readings.map(({ chainageM, offsetM = 0, groundM }): GroundReading => {
    const { xM, yM, leftX, leftY } = placeAt(line, chainageM);
    return { at: plane.toLonLat(xM + offsetM * leftX, yM + offsetM * leftY), groundM };
  });
  const isAgain = ({ at }: GroundReading) => {
    const [x, y] = plane.toPlane(at);
    return placed.some((next) => {
      const [nextX, nextY] = plane.toPlane(next.at);
      return Math.hypot(nextX - x, nextY - y) < ONE_PLACE_M;
    });
  };
  const survey = surveyOf(plan);
  const kept = survey.readings.filter((each) => !isAgain(each));
  return { ...plan, survey: { ...survey, readings: [...kept, ...placed] } };
}
