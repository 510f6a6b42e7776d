import { holdingOf, timeOf } from "../../../shared/defaults.ts";
import type { Outcome } from "../../../shared/failure.ts";
import type { Plan, Water } from "../../../shared/plan.ts";
import { SETTINGS, type Setting, type SettingPath } from "../../../shared/settings.ts";
import { isWaterGiven } from "../../../shared/stage.ts";
import { apply } from "../store.ts";

/** An adjustable figure on the worksheet: which, and what it is called there. */
export interface SettingLine {
  readonly path: SettingPath;
  readonly label: string;
}

export interface SettingGroup {
  readonly title: string;
  readonly lines: readonly SettingLine[];
}

/** How the levee is built and by whom, in the order of the worksheet. */
export const SECTION_GROUPS: readonly SettingGroup[] = [
  {
    title: "Shape and limits",
    lines: [
      { path: "section.baseRatio", label: "Base, times the height" },
      { path: "section.crownM", label: "Crown" },
      { path: "practice.limitM", label: "Height limit" },
      { path: "practice.setbackM", label: "Setback of the landside toe" },
      { path: "practice.crossFallShare", label: "Cross slope allowed, of the height" },
      { path: "section.leastBaseRatio", label: "Least base after a raise, times" },
      { path: "practice.raiseM", label: "Room to raise" },
      { path: "practice.stationIntervalM", label: "Station interval" },
    ],
  },
  {
    title: "Bag",
    lines: [
      { path: "section.bag.placedVolumeM3", label: "Volume as placed" },
      { path: "section.bag.filledMassKg", label: "Filled weight" },
      { path: "section.bag.placedWidthM", label: "Width as placed" },
      { path: "section.bag.courseM", label: "Thickness of a course" },
      { path: "practice.spareShare", label: "Spare bags" },
    ],
  },
  {
    title: "Sand",
    lines: [
      { path: "practice.wasteShare", label: "Sand wasted" },
      { path: "practice.sheetAnchorM3PerM", label: "Bags on the poly sheeting" },
      { path: "practice.sandDryKgPerM3", label: "Weight, dry and loose" },
      { path: "practice.sandWetKgPerM3", label: "Weight, wet" },
      { path: "practice.truckM3", label: "One truck carries" },
    ],
  },
  {
    title: "Poly sheeting, 6 mil or more",
    lines: [
      { path: "section.sheet.toeExtensionM", label: "Beyond the toe" },
      { path: "section.sheet.tailM", label: "Tail behind the crown" },
      { path: "section.sheet.lapM", label: "Lap, upstream on top" },
      { path: "section.sheet.rollWidthM", label: "Roll width" },
      { path: "section.sheet.rollLengthM", label: "Roll length" },
    ],
  },
  {
    title: "People",
    lines: [
      { path: "practice.people", label: "People at work" },
      { path: "practice.jobRate", label: "Whole job, bags an hour" },
      { path: "practice.taskRateLow", label: "One task, slow" },
      { path: "practice.taskRateHigh", label: "One task, fast" },
    ],
  },
];

/** Typing one of these gives the water's level. */
const WATER_LEVELS: ReadonlySet<SettingPath> = new Set(["water.stageM", "water.elevationM"]);

/** The SI value at a setting's path; null where the plan leaves it blank, or nobody has given it. */
export function settingValue(plan: Plan, path: SettingPath): number | null {
  if (WATER_LEVELS.has(path) && !isWaterGiven(plan.water)) return null;
  let at: unknown = complete(plan);
  for (const key of path.split(".")) at = (at as Record<string, unknown>)[key];
  return at as number | null;
}

/** A plan with the value at a setting's path changed. */
export function withSetting(plan: Plan, path: SettingPath, value: number | null): Plan {
  const changed = changedAt(complete(plan), path.split("."), value) as Plan;
  return WATER_LEVELS.has(path) ? { ...changed, water: asGiven(changed.water) } : changed;
}

/** The water, given by a person. */
export function asGiven({ given: _, ...water }: Water): Water {
  return water;
}

/** The plan with the settings filled in that older plans do not have. */
function complete(plan: Plan): Plan {
  return plan.holding && plan.time
    ? plan
    : { ...plan, holding: holdingOf(plan), time: timeOf(plan) };
}

function changedAt(at: unknown, keys: readonly string[], value: number | null): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  const record = at as Record<string, unknown>;
  return { ...record, [key]: changedAt(record[key], rest, value) };
}

/** Figures that are the person's own: what is declared as their default is only typical, and stands for nothing. */
const OWN: ReadonlySet<SettingPath> = new Set(["practice.people", "time.shifts"]);

export function isOwnFigure(path: SettingPath): boolean {
  return OWN.has(path);
}

/** True when a setting stands at its default. */
export function isStandard(plan: Plan, path: SettingPath): boolean {
  const { defaultSI }: Setting = SETTINGS[path];
  const value = settingValue(plan, path);
  return value !== null && Math.abs(value - defaultSI) <= 1e-9 * Math.max(1, defaultSI);
}

/** Sets one adjustable figure through the gate. */
export function changeSetting(
  path: SettingPath,
  label: string,
  value: number | null,
  gesture?: string,
): Outcome<void> {
  return apply({
    note: `Change ${label.toLowerCase()}`,
    gesture,
    change: (plan) => withSetting(plan, path, value),
  });
}
