import { FOOT_M } from "../constants.ts";
import type { Exported } from "../exports/exported.ts";
import type { Holding } from "../holding/types.ts";
import type { Plan } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";
import { namedCorners } from "../stakes/corner-names.ts";
import {
  formatElevation,
  formatFlow,
  formatFlowRange,
  formatLength,
  formatStation,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import type { StageEvent } from "../watch/stage-events.ts";
import { momentWords } from "./clock.ts";
import { spanWords } from "./holding.ts";
import { pumpWords } from "./pumps.ts";
import { shownLevelM } from "./time.ts";
import { unitsOf } from "./units.ts";

/** A level beside the gauge: what it is called, and what belongs to it. */
interface EventWords {
  readonly level: string;
  readonly title: string;
  readonly note: string;
}

const TITLES: Readonly<Record<StageEvent["kind"], string>> = {
  overtops: "Overtops above this",
  "high-crest": "High forecast",
  "likely-crest": "Forecast crest",
  "half-wet": "Water along half of it",
  "first-wet": "Water can reach it",
};

const NOTES: Readonly<Record<StageEvent["kind"], string>> = {
  overtops: "",
  "high-crest": "",
  "likely-crest": "",
  "half-wet": "all pumps tried",
  "first-wet": "patrol begun",
};

/** What happens at a level of the river, for the drawing of the gauge. */
export function eventWords(plan: Plan, event: StageEvent, system: UnitSystem): EventWords {
  const { kind, gaugeM, chainageM, likely } = event;
  const station = chainageM === null ? "" : formatStation(chainageM, system);
  const when = likely === null ? "" : momentWords(toQuarter(likely), false, system);
  // beside an hour there is no room for more than the station
  const at = station === "" || when !== "" ? station : `at ${station}`;
  return {
    level: levelFigure(plan, gaugeM, system),
    title: TITLES[kind],
    note: [at, when, NOTES[kind]].filter((words) => words !== "").join(", "),
  };
}

/** `31.0`, an elevation in hundredths; without its unit, which stands over the gauge. */
function levelFigure(plan: Plan, gaugeM: number, system: UnitSystem): string {
  const isStage = plan.water.by === "stage";
  return lengthIn(shownLevelM(plan, gaugeM), system).toFixed(isStage && system === "us" ? 1 : 2);
}

/** A forecast is no better than a quarter of an hour. */
function toQuarter<M extends { readonly atS: number }>(moment: M): M {
  return { ...moment, atS: Math.round(moment.atS / QUARTER_S) * QUARTER_S };
}

const QUARTER_S = 900;

/** What the levels beside the gauge are: `Stage, ft, Wexmere River at Kiln Road`. */
export function gaugeTitle({ water, gauge }: Plan, system: UnitSystem): string {
  const unit = lengthUnit(system);
  if (water.by === "elevation") return `Water elevation, ${unit}`;
  return [`Stage, ${unit}`, ...(gauge?.name ? [gauge.name] : [])].join(", ");
}

/** A sign on the levee and what to do, as short as a page has room for. */
interface SignWords {
  readonly kind: "boil" | "toe" | "crack" | "sheet" | "top";
  readonly title: string;
  readonly act: string;
  /** What must not be overlooked in it. */
  readonly strong: string;
}

/** Sources of the signs and of what to do. */
export const SIGN_SOURCES = "EFT-94, DWR-03, LOM, NDSU-11, NDSU-NR";

/** What to look for and do, drawn beside each. */
export function signWords(system: UnitSystem): readonly SignWords[] {
  const { figure } = unitsOf(system);
  return [
    {
      ...{ kind: "boil", title: "Boil: water wells up behind the levee" },
      strong: "Carrying soil: ring it.",
      act: `Clear water: report, keep watching. Ring it with bags, ${figure(3 * FOOT_M)} to ${figure(4 * FOOT_M)} across, and raise the ring until it runs clear. Never plug or cap it.`,
    },
    {
      ...{ kind: "toe", title: "Wet toe, seepage", strong: "" },
      act: "Mark where it begins. Lead it to the sump. Growing or cloudy: report at once.",
    },
    {
      ...{ kind: "crack", title: "Crack, bulge, slump, leaning face" },
      strong: "Everyone off and away from it.",
      act: "Report at once. Do not try to push it back.",
    },
    {
      ...{ kind: "sheet", title: "Poly sheeting lifted or torn", strong: "" },
      act: "Weigh it down with bags from the land side. Do not walk on it or wade to it.",
    },
    {
      ...{ kind: "top", title: "Water near the top", strong: "" },
      act: "Read the gauge, measure down from the top, report. Raise it only on orders: the base must carry it.",
    },
  ];
}

/** A hazard and what to do about it. */
interface Hazard {
  readonly what: string;
  readonly act: string;
}

/** What may kill or hurt, the deadliest first. */
export const HAZARDS: readonly Hazard[] = [
  { what: "Moving water", act: "keep out. Life jackets once it is at the toe." },
  { what: "Alone", act: "never. Two people, in sight; flashlights at night." },
  { what: "Electric pumps and cords", act: "ground-fault protected, out of the wet." },
  { what: "Engine exhaust", act: "run pumps outdoors. Cool, then refuel." },
  { what: "Gas and power", act: "off before you go in. Call 811 before you dig." },
  { what: "Flood water, wet bags", act: "contaminated. Gloves, goggles, wash." },
  { what: "Basement", act: "do not pump it out early; walls can cave in." },
  { what: "Lifting, no sleep", act: "use legs, pass bags, relieve crews." },
  { what: "Vehicles", act: "none on or beside the bags." },
];

export const HAZARD_SOURCES =
  "FFO-96, DWR-03, NDSU-11, LSU, QLD, MB, BASE-N, BASE-F; moving water, exhaust, gas, 811, vehicles: common practice, no source.";

const NEAR_M = 91.44;

/** `18.5 ft from Barn corner B4`; null where no building is within 300 ft. */
export function fromBuilding(
  { structures }: Pick<Plan, "structures">,
  at: readonly [number, number],
  plane: PlanPlane,
  system: UnitSystem,
): string | null {
  const [x, y] = plane.toPlane([at[0], at[1]]);
  const [nearest] = namedCorners(structures)
    .map((corner) => {
      const [cornerX, cornerY] = plane.toPlane(corner.at);
      return { ...corner, awayM: Math.hypot(cornerX - x, cornerY - y) };
    })
    .filter(({ awayM }) => awayM <= NEAR_M)
    .sort((a, b) => a.awayM - b.awayM);
  if (!nearest) return null;
  const building = structures.find(({ id }) => id === nearest.structureId)!;
  return `${formatLength(nearest.awayM, system, system === "us" ? 0 : 1)} from ${building.name} corner ${nearest.name}`;
}

/** How deep water comes if the levee fails, in the leave box; what is not known is said. */
export function ifItFails(checks: Exported["checks"], system: UnitSystem): string {
  const found = checks.flatMap(({ finding }) => (finding.kind === "if-it-fails" ? [finding] : []));
  const [deepest] = found.sort((a, b) => b.depthM - a.depthM);
  const how = "If the levee fails, water comes suddenly and fast";
  return deepest
    ? `${how}, up to ${formatLength(deepest.depthM, system)} deep at ${deepest.building}.`
    : `${how}. How deep is not known.`;
}

/** What stands over the pump log: a title and what belongs to it. */
interface PumpBox {
  readonly title: string;
  readonly text: string;
}

/** Over what is known of the pumps, in the field. */
export const PUMPS_TITLE = "Pumps and sump";
export const PUMP_LOG_WORDS =
  "Each round: pumps at work, fuel left, water below the mark at the sump. Write it on the log of the Watch page.";

/** Pumps at work, one that fails, none at all; a line without pumps calculated has the second alone. */
export function pumpBoxes({ pumping, inside }: Holding, system: UnitSystem): readonly PumpBox[] {
  const { proposed, demandM3PerS, hoursToStructure, withoutPumps } = pumping;
  const level = (m: number | null) =>
    m === null ? "as high as outside" : `at most ${formatElevation(m, system)}`;
  const soonest = hoursToStructure.soonest;
  const later = withoutPumps.slice(0, 2).map(({ hours, highM }) => `${level(highM)} in ${hours} h`);
  return [
    ...(proposed
      ? [
          {
            title: `${proposed.working} at work + ${proposed.spare} spare`,
            text: `${pumpWords(proposed.kind, unitsOf(system))}, ${formatFlow(proposed.eachM3PerS, system)} each at the least, own fuel and hose. For ${formatFlowRange(demandM3PerS, system)}.`,
          },
        ]
      : []),
    {
      title: "One fails?",
      text: "Start the spare at once, then look for the fault. Watch the level at the sump.",
    },
    ...(inside && later.length > 0
      ? [
          {
            title: soonest === null ? "No pumps" : `No pumps: ${spanWords(soonest)}`,
            text: `${soonest === null || inside.structureM === null ? "" : `at the soonest until a building is wet, at ${formatElevation(inside.structureM, system)}. `}Water inside ${later.join(", ")}.`,
          },
        ]
      : []),
  ];
}

/** Where the sump is, by the nearest station inside. */
export function sumpPlaceWords(
  chainageM: number | null,
  groundM: number | null,
  system: UnitSystem,
): string {
  return chainageM === null || groundM === null
    ? "Sump: the lowest place inside"
    : `Sump: inside ${formatStation(chainageM, system)}, ground ${formatElevation(groundM, system)}`;
}
