import { FOOT_M } from "../constants.ts";
import type { UnitSystem } from "../units.ts";
import { unitsOf } from "./units.ts";

/** What somebody is about to do where a caution belongs: leave or go back in, patrol and pump, dig and lay bags. */
export type CautionAt = "leave" | "watch" | "build";

/** A caution and where it comes from. */
export interface Caution {
  /** Where it stands in the field views, where each stands once; null where the view says it in its own words. */
  readonly at: CautionAt | null;
  readonly text: string;
  /** As few words as a page or a file of figures has room for. */
  readonly short: string;
  readonly source: string;
}

const PRACTICE = "common practice, no source";

/** The cautions that apply to every line, what may kill first: on the screen, on every page crews carry, in files. */
export const CAUTIONS: readonly Caution[] = [
  {
    at: null,
    text: "Leave in time: set the stage now, by the exit road and the time people need to get out.",
    short: "Leave in time: set the stage now, by the exit road and the time people need.",
    source: "FFO-96",
  },
  {
    at: "watch",
    text: "Keep out of moving water, on foot and in vehicles.",
    short: "Keep out of moving water.",
    source: PRACTICE,
  },
  {
    at: "watch",
    text: "No one alone. Life jackets once water is at the toe, lights at night, in sight of each other.",
    short: "No one alone; life jackets once water is at the toe; lights at night.",
    source: "DWR-03, FFO-96",
  },
  {
    at: "watch",
    text: "Electric pumps and cords on ground-fault protection and out of the wet.",
    short: "Electric pumps and cords: ground-fault protection, out of the wet.",
    source: "NDSU-11, LSU",
  },
  {
    at: "watch",
    text: "Run engines in the open, exhaust away from people and openings; stop them to refuel.",
    short: "Engines in the open; stop them to refuel.",
    source: PRACTICE,
  },
  {
    at: "build",
    text: "Call for utility locates before a trench, a stake or a sump.",
    short: "Utility locates before a trench, stake or sump.",
    source: PRACTICE,
  },
  {
    at: "leave",
    text: "Gas and power off before anybody enters a flooded building.",
    short: "Gas and power off before entering a flooded building.",
    source: PRACTICE,
  },
  {
    at: "leave",
    text: "Do not pump a basement out early, and never build against its wall: groundwater still comes up inside a ring. Lower it by about a third a day (BASE-N), or a foot, mark it and wait overnight (BASE-F).",
    short: "Do not pump a basement out early; never build against its wall.",
    source: "NDSU-11, BASE-N, BASE-F",
  },
  {
    at: null,
    text: "A boil: clear water, report and watch it; carrying soil, ring it and raise the ring until it runs clear. Never plug or cap it.",
    short: "Never plug or cap a boil: ring it until it runs clear.",
    source: "DWR-03, LOM",
  },
  {
    at: "watch",
    text: "Flood water and wet bags are contaminated: gloves and goggles, wash, and do not use wet bags again.",
    short: "Flood water and wet bags are contaminated: gloves, goggles, wash.",
    source: "QLD, NDSU-11",
  },
  {
    at: "build",
    text: "Lift with the legs and pass bags hand to hand; never throw or twist.",
    short: "Lift with the legs; pass bags, never throw.",
    source: "NDSU-11, MB",
  },
  {
    at: "build",
    text: "No vehicles on or beside the bags.",
    short: "No vehicles on or beside the bags.",
    source: PRACTICE,
  },
  {
    at: "build",
    text: "Relieve tired crews: work by day and night needs as many people again for every further shift.",
    short: "Relieve tired crews.",
    source: PRACTICE,
  },
];

/** The cautions that stand in a field view. */
export function cautionsAt(at: CautionAt): readonly Caution[] {
  return CAUTIONS.filter((caution) => caution.at === at);
}

/** What the plan is not. */
export const DISCLAIMER =
  "Calculated by Drystead from the elevation data and the forecast given. A sandbag levee is temporary. This is not a permit: local codes and licensed engineers decide.";

/** What a patrol looks for and does about it. */
export interface WatchSign {
  readonly sign: string;
  readonly act: string;
  readonly source: string;
}

export function watchSigns(system: UnitSystem): readonly WatchSign[] {
  const { figure } = unitsOf(system);
  return [
    {
      sign: "Boil: water wells up behind the levee",
      act: `Clear water: report it and keep watching. Carrying soil: ring it with bags, ${figure(3 * FOOT_M)} to ${figure(4 * FOOT_M)} across, one large ring around a group. Raise the ring until the water runs clear. Never plug or cap it.`,
      source: "EFT-94, DWR-03, LOM",
    },
    {
      sign: "Wet toe, seepage",
      act: "Lead it to the sump. Mark where it begins and look again whether it grows or runs cloudy.",
      source: `DWR-03 (look for it); what to do: ${PRACTICE}`,
    },
    {
      sign: "Cracks, slides, slumps, a leaning face",
      act: "Keep people off and away from it on the land side, and report it at once.",
      source: `DWR-03 (look for it); what to do: ${PRACTICE}`,
    },
    {
      sign: "Wave wash, torn or lifted poly sheeting",
      act: "Weight the sheeting down with bags. Do not walk on it, do not puncture it.",
      source: "DWR-03, NDSU-11",
    },
    {
      sign: "Water near the top of levee",
      act: "Read the gauge and report what is left below the top. Check with the manager before raising: the base must carry it.",
      source: "NDSU-NR, DWR-03",
    },
  ];
}

/** How a patrol goes, beside the cautions for every line. */
export const PATROL: readonly Omit<Caution, "at">[] = [
  {
    text: "Two people, always. Begin at the level written below, before water is against the levee.",
    short: "Two people, always.",
    source: "DWR-03",
  },
  {
    text: "At night: waterproof flashlights, light sticks, life jackets, in sight of each other.",
    short: "At night: flashlights, life jackets, in sight of each other.",
    source: "FFO-96",
  },
];
