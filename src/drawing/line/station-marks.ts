import type { Feature, FeatureCollection } from "geojson";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { formatStation, lengthFrom, type UnitSystem } from "../../../shared/units.ts";
import { beside, spotAt } from "./along.ts";
import { directionOf, type LabelReach } from "./label-offset.ts";

/** Least distance between two labelled stations along the line, CSS pixels. */
const APART_PX = 90;
/** Distance of a label's middle from the toe. */
export const STATION_LABEL: LabelReach = { em: 1.7, spreadEm: 0.5 };
const SERIES = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

/** Distance between labelled stations that suits the zoom: never below 10 ft or 5 m, in round stations. */
export function stationStepM(metresPerPx: number, system: UnitSystem): number {
  const wantedM = APART_PX * metresPerPx;
  const base = system === "us" ? 10 : 5;
  const step = SERIES.find((each) => lengthFrom(each * base, system) >= wantedM) ?? SERIES.at(-1)!;
  return lengthFrom(step * base, system);
}

/**
 * Labelled stations as points on the water-side toe: `text`, `bearing` of the tick (degrees clockwise from
 * north, pointing away from the line) and `direction` of the label from the point (label-offset.ts).
 * @param side the water's side, left (+1) or right (-1) of chainage
 */
export function stationMarks(
  line: SizedLine,
  metresPerPx: number,
  system: UnitSystem,
  side: 1 | -1,
): FeatureCollection {
  const { walk } = line;
  const stepM = stationStepM(metresPerPx, system);
  const lengthM = walk.chainageM.at(-1) ?? 0;
  const features: Feature[] = [];
  const lastM = line.kind === "ring" ? lengthM - stepM / 2 : lengthM;
  for (let k = 0; k * stepM <= lastM + 1e-6; k++) {
    const spot = spotAt(walk, k * stepM);
    if (!spot) break;
    const toeM = side > 0 ? spot.toeLeftM : spot.toeRightM;
    const [east, north] = [spot.left[0] * side, spot.left[1] * side];
    features.push({
      type: "Feature",
      properties: {
        text: formatStation(k * stepM, system, system === "us" ? 0 : decimals(stepM)),
        bearing: (Math.atan2(east, north) * 180) / Math.PI,
        direction: directionOf(east, north),
        rank: k % 2,
      },
      geometry: { type: "Point", coordinates: beside(spot, side * toeM) },
    });
  }
  return { type: "FeatureCollection", features };
}

function decimals(stepM: number): number {
  return Number.isInteger(stepM) ? 0 : 1;
}
