import { bagOrder } from "../bag-order.ts";
import { FOOT_M } from "../constants.ts";
import type { Plan } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import {
  formatArea,
  formatCount,
  formatLength,
  formatMass,
  formatShare,
  formatSmallMass,
  formatSmallVolume,
  formatStation,
  formatVolume,
  type UnitSystem,
} from "../units.ts";
import { bagOrderParts } from "./bag-order.ts";
import { asideWords } from "./closure-rows.ts";
import { stationsWords } from "./crew-parts.ts";
import { orderFigureWords } from "./ground-chances.ts";
import { type MaterialKey, takenMaterials } from "./materials.ts";
import { pumpEachWords } from "./pumps.ts";
import { SETTLING_NOTE } from "./settling.ts";
import { rollsWords, rollWords } from "./takes.ts";
import { unitsOf } from "./units.ts";

/** One thing to get. `amount` null is a blank to fill in: no rule or source gives a figure. */
export interface OrderRow {
  readonly name: string;
  readonly amount: string | null;
  readonly note: string;
}

/** The empty bags of a crate. Source: MVR. */
const BAGS_PER_CRATE = 12_500;
const PRACTICE = "common practice, no source";

/** Materials that are calculated for the line. */
export function materialRows(plan: Plan, line: SizedLine, system: UnitSystem): OrderRow[] {
  const { totals } = line;
  const order = bagOrder(totals);
  const { practice, section } = plan;
  const { sheet, bag } = section;
  const aside = asideWords(line, system);
  const crates = Math.ceil(order.total / BAGS_PER_CRATE);
  return [
    {
      name: "Bags, empty",
      amount: formatCount(order.total),
      note: `${bagOrderParts(order)}; spare ${formatShare(practice.spareShare)}. ${crates === 1 ? "1 crate" : `${crates} crates`} of ${formatCount(BAGS_PER_CRATE)}, where they come so (MVR). ${orderFigureWords(line, system)}`,
    },
    {
      name: "Sand",
      amount: formatVolume(totals.sandM3, system),
      note: `${formatMass(totals.sandDryKg, system)} dry, ${formatMass(totals.sandWetKg, system)} wet, ${formatShare(practice.wasteShare)} lost (${PRACTICE}). A filled bag is ${formatSmallMass(bag.filledMassKg, system)}.`,
    },
    {
      name: `Poly sheeting, ${system === "us" ? "6 mil" : "0.15 mm"} or more`,
      amount: rollsWords(totals.sheetRolls),
      note: `${rollWords(plan, system)} each; ${formatArea(totals.sheetM2, system)} laid, lap ${unitsOf(system).figure(sheet.lapM)} (NDSU-11, MVS).`,
    },
    ...takenMaterials(totals.materials, system).map(({ key, name, amount }) => ({
      name,
      amount,
      note: takenOn(line, key, system),
    })),
    ...(aside ? [{ name: "Set beside ways left open", ...aside }] : []),
  ];
}

/** Which reaches take a material. */
function takenOn(
  line: SizedLine,
  key: ReturnType<typeof takenMaterials>[number]["key"],
  system: UnitSystem,
): string {
  return line.reaches
    .filter(({ totals }) => totals.materials[key] > 0)
    .map(
      ({ fromM, toM, sectionName }) =>
        `${formatStation(fromM, system, 0)} to ${formatStation(toM, system, 0)}, ${sectionName.toLowerCase()}`,
    )
    .join("; ");
}

/** Pumps as calculated, and what goes with them. */
export function pumpRows({ holding }: SizedLine, system: UnitSystem): OrderRow[] {
  if (!holding) return [];
  const { proposed } = holding.pumping;
  const pumps: OrderRow = proposed
    ? {
        name: "Pumps",
        amount: `${proposed.working} + ${proposed.spare} spare`,
        note: `${pumpEachWords(proposed, system)} (PWM, LSU).`,
      }
    : {
        name: "Pumps",
        amount: null,
        note: "Nothing is calculated to be pumped. Rain and leaks still come.",
      };
  return [
    pumps,
    {
      name: "Hose for each pump",
      amount: null,
      note: "Long enough to reach over the levee to the water side.",
    },
    {
      name: "Fuel",
      amount: null,
      note: "Pumps, lights and generators, day and night. Ask the supplier what each burns.",
    },
    {
      name: "Sump pail",
      amount: "1",
      note: "With holes, set in the ground at the sump (NDSU-11).",
    },
  ];
}

/** What people work with. Figures only where the plan or a source has them. */
export function gearRows({ practice }: Plan, system: UnitSystem): OrderRow[] {
  const { people } = practice;
  const each = people === null ? null : formatCount(people);
  return [
    {
      name: "Gloves, pairs",
      amount: each,
      note: `One pair for each person at work (${PRACTICE}); spare pairs: ____. Goggles for who fills (NDSU-11).`,
    },
    {
      name: "Life jackets",
      amount: null,
      note: "For everyone at the levee once water is at the toe, two people on patrol at least (DWR-03, FFO-96).",
    },
    {
      name: "Flashlights, waterproof",
      amount: null,
      note: "One for each person on night patrol (FFO-96).",
    },
    {
      name: "Lights for work",
      amount: null,
      note: "Where work goes on in the dark, with their power.",
    },
    {
      name: "Shovels",
      amount: null,
      note: "One for each two who fill: one keeps the bag open, one shovels (NDSU-11).",
    },
    {
      name: "Stakes, level and rod",
      amount: null,
      note: `Stakes as on the Stakes page; a level and a rod, or a tape of ${unitsOf(system).figure(100 * FOOT_M)}.`,
    },
    { name: "Wheelbarrows, pallets, carts", amount: null, note: "" },
    { name: "Knives and tape for poly", amount: null, note: "" },
  ];
}

/** Loads of one material: how many, and the last one's row number. */
export interface Delivery {
  readonly what: string;
  readonly amount: string;
  readonly loads: string | null;
}

/** What comes by truck. */
export function deliveries(plan: Plan, line: SizedLine, system: UnitSystem): Delivery[] {
  const { totals } = line;
  const { truckM3 } = plan.practice;
  return [
    {
      what: "Sand",
      amount: formatVolume(totals.sandM3, system),
      loads: `${formatCount(totals.trucks)} of ${formatVolume(truckM3, system)}`,
    },
    { what: "Bags, empty", amount: formatCount(bagOrder(totals).total), loads: null },
    { what: "Poly sheeting", amount: rollsWords(totals.sheetRolls), loads: null },
    ...takenMaterials(totals.materials, system)
      .filter(({ key }) => key !== "looseSandM3")
      .map(({ name, amount }) => ({ what: name, amount, loads: null })),
    { what: "Pumps, hose, fuel", amount: "", loads: null },
  ];
}

/** Heads and sentences of the order page. */
export const ORDER_WORDS = {
  materials: "Materials",
  pumps: "Pumps and power",
  plugs: "Plugs for culverts and drains",
  gear: "Tools and protection",
  deliveries: "Deliveries",
  columns: ["What", "Amount", "Truckloads", "Set down at", "Day and hour", "From, phone", "✓"],
  notPlaced:
    "Where loads are set down is not placed on this plan: write it in. Keep trucks off the line of the levee and off the bags.",
  blanks: "An empty line has no rule or source: fill it in.",
  notKnown: "Bags, sand and poly sheeting: not known. Order nothing by this page.",
} as const;

/** How much is built of the line that this is the order for. */
export function orderedFor({ totals }: SizedLine, system: UnitSystem): string {
  return `For ${formatLength(totals.builtLengthM, system, 0)} built of ${formatLength(totals.lengthM, system, 0)}.`;
}

/** What the counts of the order rest on, beside bags, sand and poly sheeting, and what the levee comes to. */
export function orderBasis(
  { practice, section }: Plan,
  { totals, reaches }: SizedLine,
  system: UnitSystem,
) {
  const { bag, sheet } = section;
  const length = (m: number) => formatLength(m, system, 0);
  const isOne = reaches.every(({ limitM }) => limitM === practice.limitM);
  const limit = isOne
    ? `the height limit of ${formatLength(practice.limitM, system)}`
    : "the height limit of its levee type";
  return {
    bags: `${bagOrderParts(bagOrder(totals))}; ${formatSmallVolume(bag.placedVolumeM3, system)} as placed, ${formatSmallMass(bag.filledMassKg, system)} filled, ${formatShare(practice.spareShare)} spare. ${SETTLING_NOTE}`,
    sand: `${formatMass(totals.sandDryKg, system)} dry, ${formatMass(totals.sandWetKg, system)} wet, ${formatShare(practice.wasteShare)} lost; ${formatCount(totals.trucks)} truckloads of ${formatVolume(practice.truckM3, system)}`,
    sheeting: `${rollWords({ section }, system)} each, ${formatArea(totals.sheetM2, system)} laid, lap ${unitsOf(system).figure(sheet.lapM)}, upstream over downstream`,
    levee: `${length(totals.builtLengthM)} built of ${length(totals.lengthM)}, greatest height ${formatLength(totals.greatestHeightM, system)}, ${length(totals.lengthOverLimitM)} over ${limit}`,
  };
}

/** Which reaches take a material, as what, and how much where there are several. */
export function reachesTakingWords(
  { reaches }: SizedLine,
  key: MaterialKey,
  system: UnitSystem,
): string {
  const taking = reaches.filter(({ totals }) => totals.materials[key] > 0);
  return taking
    .map(({ sectionName, totals, ...reach }) => {
      const own = takenMaterials(totals.materials, system).find((each) => each.key === key);
      const share = taking.length > 1 ? `, ${own?.amount}` : "";
      return `${stationsWords(reach, system)}, ${sectionName.toLowerCase()}${share}`;
    })
    .join("; ");
}
