import type { Section } from "../plan.ts";
import type { UnitSystem } from "../units.ts";
import { type Units, unitsOf } from "./units.ts";

/** One thing to do when bags are laid, and where it comes from. */
interface Laying {
  readonly text: string;
  readonly source: string;
}

/** How the bags of a pyramid are laid, in the order of the work. */
export function layingWords({ sheet }: Section, system: UnitSystem): readonly Laying[] {
  return LAYING.map((make) => make(sheet, unitsOf(system)));
}

const LAYING: readonly ((sheet: Section["sheet"], units: Units) => Laying)[] = [
  () => ({
    text: "First course lengthwise, along the flow, open ends downstream. Lap the filled part of each bag over the unfilled part of the next.",
    source: "NDSU-11",
  }),
  () => ({
    text: "Next courses crosswise and lengthwise in turn, lapped by at least a third, joints offset by half a bag.",
    source: "DWR-03, NDSU-11",
  }),
  () => ({ text: "Walk on every course to tamp it before the next.", source: "NDSU-11" }),
  ({ lapM }, units) => ({
    text: `Poly sheeting on the river side from downstream up, lapped ${units.figure(lapM)}, upstream on top, its edge under bags.`,
    source: "NDSU-11",
  }),
];
