import { bagOrder } from "../../bag-order.ts";
import { EMPTY_BAG_CRATE } from "../../handbook.ts";
import type { Plan } from "../../plan.ts";
import { wholeOrder } from "../../quantities.ts";
import { formatSetting } from "../../setting-text.ts";
import { SETTINGS, type SettingPath } from "../../settings.ts";
import type { SizedLine, Totals } from "../../sizing-types.ts";
import {
  formatCount,
  formatLength,
  formatSmallMass,
  formatVolume,
  type UnitSystem,
} from "../../units.ts";

/** What a number on the screen is made of. */
export interface Makeup {
  readonly formula: string;
  readonly inputs: readonly { readonly name: string; readonly value: string }[];
  readonly source: string;
}

/** What a make-up is asked for. `totals` may be a reach's or those at plus or minus the ground's accuracy. */
export interface MakeupInputs {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly totals: Totals;
  readonly system: UnitSystem;
}

export type Input = Makeup["inputs"][number];
export function given(name: string, path: SettingPath, valueSI: number, system: UnitSystem): Input {
  return { name, value: formatSetting(SETTINGS[path].kind, valueSI, system) };
}

function volume(totals: Totals, system: UnitSystem): Input {
  return { name: "volume", value: formatVolume(totals.volumeM3, system) };
}

export function ofItLoose({ materials }: Totals, system: UnitSystem): Input[] {
  const { looseSandM3 } = materials;
  if (looseSandM3 === 0) return [];
  return [{ name: "of it filled loose", value: formatVolume(looseSandM3, system) }];
}

/** Length on which no sheet is laid, where reaches have none. */
export function withoutSheet({ reaches }: SizedLine, system: UnitSystem): Input[] {
  const bare = reaches.filter(({ totals }) => totals.sheetM2 === 0 && totals.builtLengthM > 0);
  const bareM = bare.reduce((sum, { totals }) => sum + totals.builtLengthM, 0);
  if (bareM === 0) return [];
  return [{ name: "of the line without poly sheeting", value: formatLength(bareM, system, 0) }];
}

/** The volume that bags are counted for: all of it, or all but what is filled without them. */
export function inBags(totals: Totals, { practice }: Plan, system: UnitSystem): Input[] {
  const { looseSandM3, earthM3 } = totals.materials;
  const looseM3 = (looseSandM3 + earthM3) / (1 + practice.wasteShare);
  if (looseM3 === 0) return [volume(totals, system)];
  return [
    volume(totals, system),
    { name: "of it without bags", value: formatVolume(looseM3, system) },
  ];
}

export function built(totals: Totals, system: UnitSystem): Input {
  return { name: "built length", value: formatLength(totals.builtLengthM, system, 0) };
}

export function bagVolume({ section }: Plan, system: UnitSystem): Input {
  const path = "section.bag.placedVolumeM3";
  return given("one placed bag", path, section.bag.placedVolumeM3, system);
}

/** Limits of the sections that have one of their own. */
export function ownLimits({ reaches }: SizedLine, system: UnitSystem): Input[] {
  const own = new Map(
    reaches.map(({ section, sectionName, limitM }) => [section, { sectionName, limitM }]),
  );
  own.delete("pyramid");
  return [...own.values()].map(({ sectionName, limitM }) => ({
    name: sectionName,
    value: formatLength(limitM, system),
  }));
}

export function cratesWords(totals: Totals, system: UnitSystem): string {
  const { bags, massKg } = EMPTY_BAG_CRATE;
  const crates = wholeOrder(bagOrder(totals).total / bags);
  return `${formatCount(crates)} crates of ${formatCount(bags)}, ${formatSmallMass(massKg, system)} each`;
}

export function anchor({ practice }: Plan, system: UnitSystem): Input {
  const path = "practice.sheetAnchorM3PerM";
  return given(
    "sand that weights the poly sheeting down",
    path,
    practice.sheetAnchorM3PerM,
    system,
  );
}

export function sheetInputs({ section }: Plan, system: UnitSystem): Input[] {
  const { sheet } = section;
  return [
    given("beyond the toe", "section.sheet.toeExtensionM", sheet.toeExtensionM, system),
    given("crown", "section.crownM", section.crownM, system),
    given("tail", "section.sheet.tailM", sheet.tailM, system),
  ];
}
