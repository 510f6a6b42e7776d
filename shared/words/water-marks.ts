import type { Plan } from "../plan.ts";
import { formatElevation, formatLength, formatStation, type UnitSystem } from "../units.ts";
import type { Overtopping, Reached, TracedAlternative, WaterTrace, WayIn } from "../water-types.ts";
import { fromWords, overtopsWords, placeWords, raisedLevelWords, sillWords } from "./water.ts";

const OVER = { crest: "the top of levee", ground: "the ground" } as const;

function wayWords(way: WayIn, system: UnitSystem): string {
  const over =
    way.groundM === null
      ? "where there is no elevation data"
      : `over ground at ${formatElevation(way.groundM, system)}`;
  return `${placeWords(way, system)}, ${over}`;
}

/** Where water comes in, as it is written beside its mark: the fullest words first, then by itself. */
export function wayInMarkWords(way: WayIn, system: UnitSystem) {
  return {
    texts: [
      `The water comes in ${placeWords(way, system)}`,
      `Water in at ${formatStation(way.chainageM, system)}`,
    ],
    title: `The water comes in ${wayWords(way, system)}.`,
  };
}

/** Where water comes in, and what it reaches. */
export function wayInText(way: WayIn, structures: readonly Reached[], system: UnitSystem): string {
  const reached = structures.find(({ id }) => id === way.structureId)?.name ?? "the ground inside";
  return `It comes ${wayWords(way, system)}, and reaches ${reached}.`;
}

/** Where water comes first if the river rises, and at which level; null where none was found. */
export function firstOverText(
  line: TracedAlternative,
  plan: Plan,
  system: UnitSystem,
): string | null {
  const first = line.firstOver;
  if (!first) return null;
  return `${line.name} ${overtopsWords(line, plan, system)}, ${formatLength(first.riseM, system)} above the sized-for water; then water comes in over ${OVER[first.over]} ${placeWords(first, system)}.`;
}

/** Over which place water reaches a building while nothing is built. */
export function sillText(first: Reached, plan: Plan, system: UnitSystem): string {
  return `With no levee built, water reaches ${first.name} over this place: ${sillWords(first, plan, system)}.`;
}

/** One of the places where a rising river overtops first, counted from 1. */
export function overPlaceWords(place: Overtopping, number: number, plan: Plan, system: UnitSystem) {
  const { chainageM, riseM, elevationM, over } = place;
  const level = raisedLevelWords(riseM, elevationM, plan, system);
  return `Number ${number} of the places where a rising river overtops first: ${formatStation(chainageM, system)}, above ${level}, over ${OVER[over]}.`;
}

/** What the picture of water on large elevation data does not show. */
export function coarseWaterWords(
  { water }: Pick<WaterTrace, "water">,
  where: "legend" | "worksheet",
  system: UnitSystem,
): string {
  const cell = formatLength(water.cellM, system);
  if (where === "worksheet") {
    return `This elevation data is large: its water is shown in cells of ${cell}. Buildings and lines are traced on every cell near the plan.`;
  }
  return water.resolvesLines
    ? `Large elevation data: away from the plan, water is shown in cells of ${cell}.`
    : `Water traced at ${cell} cells: whether it gets inside a line is not known.`;
}

/** What is tinted and hatched on a printed map. */
export function tintWords(trace: WaterTrace | null): string {
  return trace
    ? `Tinted: water connected to ${fromWords(trace)}. Dotted: low ground, not connected. Thin hatch: behind the line, no overland path in.`
    : "Tinted: all ground below the sized-for water, whether or not the river reaches it.";
}
