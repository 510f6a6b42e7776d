import { isCounted } from "../completeness.ts";
import type { GroundSimulation, SurveyFirst } from "../ground-uncertainty/types.ts";
import type { SizedLine } from "../sizing-types.ts";
import {
  formatCount,
  formatElevation,
  formatLength,
  formatShare,
  formatStation,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";

/** A line with what its bags are on the grounds that its elevation data may stand for. */
type Simulated = Pick<SizedLine, "simulatedGround" | "groundAccuracy" | "totals" | "levelDoubt">;

/** More digits of a chance are not known. */
const DIGITS = 3;

/** A count that is enough, rounded up to three digits. */
export function enoughWords(count: number): string {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, count))) + 1 - DIGITS);
  return formatCount(Math.ceil(count / step) * step);
}

/** `8 in 10`; at the ends `under 1 in 20` and `over 19 in 20`. */
export function chanceWords(share: number): string {
  if (share < 0.05) return "under 1 in 20";
  if (share > 0.95) return "over 19 in 20";
  return `${Math.min(9, Math.max(1, Math.round(10 * share)))} in 10`;
}

/** `±0.33 ft in height. Bags 9 in 10, by judgement: up to 23,200`. */
export function heightAccuracyWords(
  line: Simulated | null,
  rmseM: number,
  system: UnitSystem,
): string {
  const height = `±${formatLength(rmseM, system, 2)} in height`;
  const chance = line && nineInTenWords(line);
  return chance ? `${height}. Bags ${chance}` : height;
}

/** How the error of the elevation data is shared out has no source, and a chance that follows from it none either. */
const NINE = "9 in 10, judged";

/** `9 in 10, judged: 23,200`, under the bags of the levee; null where nothing is counted. */
export function nineInTenWords(line: Simulated): string | null {
  if (!isCounted(line)) return null;
  const { simulatedGround } = line;
  if (simulatedGround === undefined) return `${NINE}: counting`;
  if (simulatedGround === null) return `${NINE}: not known`;
  const { nineInTen } = simulatedGround;
  return `${NINE}: ${enoughWords(nineInTen.bags)}`;
}

/** Bags to order by how often they are enough. */
export function orderChances({ simulatedGround }: Simulated) {
  if (!simulatedGround) return [];
  const { oneInTwo, nineInTen, nineInTenSurveyed } = simulatedGround;
  return [
    { key: "half", name: "Order, enough 1 in 2", amount: enoughWords(oneInTwo.order) },
    { key: "nine", name: "Order, enough 9 in 10", amount: enoughWords(nineInTen.order) },
    ...(nineInTenSurveyed
      ? [
          {
            key: "surveyed",
            name: "9 in 10, once every stake is surveyed",
            amount: enoughWords(nineInTenSurveyed.order),
          },
        ]
      : []),
  ];
}

/** Which of the figures an order is, and the others; a sentence or two. */
export function orderFigureWords(line: Simulated, system: UnitSystem): string {
  const counted = "Counted on the ground as in the elevation data and the readings.";
  const { simulatedGround } = line;
  if (!simulatedGround) return counted;
  const [half, nine] = orderChances(line);
  return `${counted} Enough 1 in 2: ${half!.amount}; 9 in 10: ${nine!.amount}, by judgement how the error of the ground, ${accuracyWords(line, system)}, is shared out.`;
}

/** `Some place over the height limit: 8 in 10.` Null where nothing is known. */
export function overLimitWords({ simulatedGround }: Simulated): string | null {
  return simulatedGround && simulatedGround.fields > 0
    ? `Some place over the height limit: ${chanceWords(simulatedGround.overLimit)}.`
    : null;
}

/** Why the ground is to be surveyed at a station. */
export function surveyFirstWords({ because, overLimit }: SurveyFirst): string {
  return because === "limit"
    ? `over the height limit ${chanceWords(overLimit)}`
    : "tells most about the bags";
}

/** What the mark of a station on the profile says. */
export function surveyMarkWords(first: SurveyFirst, system: UnitSystem): string {
  return `Survey the ground at ${formatStation(first.chainageM, system)} first: ${surveyFirstWords(first)}.`;
}

/** What the mark of a reading on the profile says. */
export function readingMarkWords(
  { chainageM, readM, dataM }: { chainageM: number; readM: number; dataM: number },
  system: UnitSystem,
): string {
  return `Ground read at ${formatStation(chainageM, system)}: ${formatElevation(readM, system)}, ${correctionWords(readM - dataM, system)} from the elevation data.`;
}

/** `Survey first at 4+38, 1+25.` Null where it would tell little. */
export function surveyFirstList({ simulatedGround }: Simulated, system: UnitSystem): string | null {
  const first = simulatedGround?.surveyFirst ?? [];
  if (first.length === 0) return null;
  return `Survey first at ${first.map(({ chainageM }) => formatStation(chainageM, system)).join(", ")}.`;
}

/** What was tried: how the error is made up and what the grounds pass through. */
export function triedWords(simulated: GroundSimulation, system: UnitSystem): string {
  const { fields, model, readings } = simulated;
  const { biasShare, correlatedShare, rangeM } = model;
  const own = Math.max(0, 1 - biasShare - correlatedShare);
  const parts = `${formatShare(biasShare)} the same everywhere, ${formatShare(correlatedShare)} alike within ${formatLength(rangeM, system, 0)}, ${formatShare(own)} each cell's own`;
  const through =
    readings === 0
      ? ""
      : ` All pass through the ${readings === 1 ? "reading" : `${formatCount(readings)} readings`} of the ground.`;
  return `${formatCount(fields)} grounds tried: elevation data and an error, ${parts}. These shares are judgement, with no published source.${through}`;
}

/** `+0.21 ft`: what all elevation data are raised by. */
export function correctionWords(m: number, system: UnitSystem): string {
  const figure = lengthIn(m, system).toFixed(2);
  return `${m > 0 ? "+" : ""}${figure.replace("-", "−")} ${lengthUnit(system)}`;
}

function accuracyWords({ groundAccuracy }: Simulated, system: UnitSystem): string {
  return `±${formatLength(groundAccuracy.rmseM, system, 2)}`;
}
