import {
  CUBIC_FOOT_M3,
  CUBIC_YARD_M3,
  FOOT_M,
  HOUR_S,
  INCH_M,
  PCF_KG_PER_M3,
  POUND_KG,
} from "../constants.ts";
import type { TypicalAccuracy } from "../ground-accuracy.ts";
import { formatSetting } from "../setting-text.ts";
import type { SettingPath } from "../settings.ts";
import { formatCount, formatLength, type UnitSystem } from "../units.ts";
import { listed } from "./list.ts";
import type { Units } from "./units.ts";

type Note = (units: Units) => string;

/** `1,762 kg/m³` or `110 lb/cu ft`. */
function density(pcf: number, { system }: Units): string {
  return formatSetting("density", pcf * PCF_KG_PER_M3, system);
}

function feet(values: readonly number[], units: Units, last: "and" | "or" = "and"): string {
  return listed(
    values.map((value) => units.figure(value * FOOT_M)),
    last,
  );
}

const FLOODWALLS: Note = () => "1.5 for floodwalls. Local codes and licensed engineers decide.";
const CUT: Note = () =>
  "Poly sheeting takes 60 to 70 % off what passes through, nothing off what passes under.";
const DAYLIGHT: Note = () =>
  "Left empty, work without lights goes from sunrise to sunset at the site. An hour typed here only makes the day shorter.";

function trench(u: Units): string {
  return `Bond trench ${u.smallRange(4 * INCH_M, 6 * INCH_M)} deep`;
}

/** Where sources disagree about a setting, or what else its number means. A setting without a note is left out. */
const NOTES: Readonly<Partial<Record<SettingPath, Note>>> = {
  "water.stageM": () =>
    "Sized-for stage at the gauge; the water surface is gauge zero plus stage plus datum offset.",
  "water.gaugeZeroM": () =>
    "A surveyed datum is better than an elevation read from a map (USGS-D).",
  "water.datumOffsetM": () =>
    "Added to the elevation at the gauge to reach the datum of the elevation data. NGVD 29 and NAVD 88 differ by place: use the geodetic agency's converter, never a constant.",
  "water.elevationM": () => "Water-surface elevation in the datum of the elevation data.",
  "water.fallPerM": () =>
    "Water between gauge and site is sloped. No fall is assumed until you give one and draw its direction.",
  "water.freeboardM": (u) =>
    `Sources disagree: ${u.figure(FOOT_M)} (NDSU-11, IS-280), ${u.figure(2 * FOOT_M)} (MB, EMI-L4), ${u.figure(3 * FOOT_M)} for permanent urban levees (EM1913-78).`,
  "ground.rmseM": (u) =>
    `For cells of ${u.length(1)}: 95 % of points within ${u.length(0.196)}. Left empty, a figure typical of the cell size is taken. Use what the survey's report says.`,
  "ground.correctionM": () =>
    "Added to every elevation before anything is counted; the map's pictures stay as the file has them. Readings of the ground give it, in Survey.",
  "ground.biasShare": () =>
    "Share of the error's variance that is the same over the whole survey, as a wrong datum or flight makes it. It does not cancel along a line.",
  "ground.correlatedShare": () =>
    "Share of the error's variance that neighboring places have in common, as strips, plants and soft ground make it. What the two shares leave is each cell's own.",
  "ground.rangeM": () =>
    "Farther apart than this, errors have under 5 % in common (exponential model, practical range).",
  "section.baseRatio": (u) =>
    `Sources disagree: base 3 times the height (NDSU-11, FFO-96), 2.5 to 3 (IL-RET), 2 as a minimum (NDSU-NR), height plus ${u.figure(2 * FOOT_M)} (MB, SDUN).`,
  "section.leastBaseRatio": () => "Twice as wide as high is published as a minimum.",
  "section.crownM": (u) =>
    `${u.figure(0.75 * FOOT_M)} reproduces the published sand table within ${formatSetting("volume-per-length", CUBIC_YARD_M3 / (100 * FOOT_M), u.system)}. MB and SDUN require ${u.figure(2 * FOOT_M)}, CWCB-D2 ${u.figure(3 * FOOT_M)} at closures.`,
  "section.bag.placedVolumeM3": (u) =>
    `${u.mass(36 * POUND_KG)} at ${density(110, u)}. Sources disagree: ${u.smallVolume(0.28 * CUBIC_FOOT_M3)} (EMI-L4), ${u.smallVolume(0.21 * CUBIC_FOOT_M3)} (THW-S), ${u.smallVolume(0.35 * CUBIC_FOOT_M3)} to ${u.smallVolume(0.44 * CUBIC_FOOT_M3)} (AT). This number moves the bag count most.`,
  "section.bag.filledMassKg": (u) =>
    `Sources disagree: ${u.mass(35 * POUND_KG)} to ${u.mass(40 * POUND_KG)} (NDSU-11), about ${u.mass(40 * POUND_KG)} half full (EFT-94), ${u.mass(11)} to ${u.mass(14)} (THW-S), up to ${u.mass(20)} (DERB).`,
  "section.bag.placedWidthM": (u) =>
    `Bags are ${u.small(14 * INCH_M)} wide and ${u.smallRange(24 * INCH_M, 26 * INCH_M)} long.`,
  "section.bag.courseM": (u) =>
    `One bag gives ${u.smallRange(3 * INCH_M, 4 * INCH_M)} of height; ${u.small(0.08)} for the smaller bag of THW-S.`,
  "section.sheet.toeExtensionM": (u) =>
    `Sources disagree: ${u.figure(FOOT_M)} beyond the toe (NDSU-11), at least ${u.figure(2 * FOOT_M)} (MVS).`,
  "section.sheet.tailM": () => "What hangs over the landside of the crown.",
  "section.sheet.rollWidthM": (u) =>
    `Rolls of ${u.figure(20 * FOOT_M)}; ${u.figure(8 * FOOT_M)} to ${u.figure(10 * FOOT_M)} in NDSU-97, SDUN and MB.`,
  "section.sheet.rollLengthM": (u) => `${feet([100, 200], u, "or")}.`,
  "section.sheet.lapM": (u) =>
    `Upstream sheeting over downstream sheeting. Sources disagree: ${u.figure(3 * FOOT_M)} (NDSU-11), ${u.figure(2 * FOOT_M)} to ${u.figure(3 * FOOT_M)} (MVS, MO-2217).`,
  "practice.limitM": (u) =>
    `MO-2217: ${u.figure(3 * FOOT_M)} preferred, ${u.figure(5 * FOOT_M)} practical limit. Checked on the greatest height, at the lowest ground under the base.`,
  "practice.setbackM": () => "Clear room to work, watch and pump; never against a basement wall.",
  "practice.stationIntervalM": () => "Distance between stakes. Quantities do not depend on it.",
  "practice.spareShare": () => "5 to 10 % for breakage and topping up.",
  "practice.wasteShare": () => "Sand spilled, left in the pile and washed away.",
  "practice.sheetAnchorM3PerM": (u) =>
    `${formatSetting("volume-per-length", (2 * CUBIC_YARD_M3) / (100 * FOOT_M), u.system)} for the bags that weight the poly sheeting down.`,
  "practice.sandDryKgPerM3": (u) => `Sand and gravel, loose, without water: ${density(95, u)}.`,
  "practice.sandWetKgPerM3": (u) => `Sand and gravel, wet: ${density(120, u)}.`,
  "practice.crossFallShare": () =>
    "Fall of the ground from toe to toe as a share of the height: the cross slope.",
  "practice.taskRateLow": () =>
    "Bags per person-hour, filling or placing. Plan 40 to 60; AT has 25 to 50 by hand.",
  "practice.taskRateHigh": () =>
    "Bags per person-hour, filling or placing. 80 only with practiced crews.",
  "practice.jobRate": (u) =>
    `Whole job: 205.1 person-hours for ${u.figure(85 * FOOT_M)} at ${u.figure(3 * FOOT_M)}, ${formatCount(45 * 85)} bags.`,
  "practice.people": () =>
    "People working at the same time. A typical figure: nothing is timed until you enter your own.",
  "practice.truckM3": (u) =>
    `What a county's tandem-axle dump truck carries. TM-TRK: ${formatSetting("load-volume", 3 * CUBIC_YARD_M3, u.system)} wet or ${formatSetting("load-volume", 3.5 * CUBIC_YARD_M3, u.system)} loose for a 5-ton dump truck, by its weight limit.`,
  "practice.raiseM": (u) =>
    `Another ${u.figure(FOOT_M)} to ${u.figure(2 * FOOT_M)} above the forecast crest may be required; never past the height limit.`,
  "holding.frictionLow": () =>
    "Bags on wet grass 0.3 to 0.4; anything on poly sheeting 0.2 to 0.3. NAV702 has 0.30 to 0.35 for concrete on silt and soft clay. Measured values exist (KRAHN) but were not found.",
  "holding.frictionHigh": () =>
    "Bag on bag about 0.5. NAV702 has 0.45 to 0.55 for concrete on clean fine to medium sand.",
  "holding.leveeKgPerM3": (u) =>
    `${density(110, u)}, moist. TM-TRK: loose ${density(95, u)}, wet ${density(120, u)}.`,
  "holding.slidingFactor": FLOODWALLS,
  "holding.overturningFactor": FLOODWALLS,
  "holding.fillLowMPerS": () =>
    "No measured seepage through bags was found. Joints between bags decide it, not the sand.",
  "holding.fillHighMPerS": () =>
    "Filling sand 0.01 to 0.1 cm/s; river sands reach 0.2 cm/s (TP-K).",
  "holding.sheetCutLow": CUT,
  "holding.sheetCutHigh": CUT,
  "holding.underDepthM": () =>
    "Pervious soil down to clay or rock. At 0 the seepage under the levee is not counted.",
  "holding.underLowMPerS": () =>
    "Very fine uniform sand 0.0001 to 0.0064 cm/s, river sand 0.02 to 0.2, loess loam 0.0001, clay below 0.0000001 cm/s.",
  "holding.underHighMPerS": () =>
    "Very fine uniform sand 0.0001 to 0.0064 cm/s, river sand 0.02 to 0.2, outwash to 2 cm/s.",
  "holding.trenchLowM": (u) =>
    `${trench(u)}; taken as the depth to which the landside toe is set in.`,
  "holding.trenchHighM": (u) => `${trench(u)}; one bag deep in MB.`,
  "holding.rainMPerS": (u) =>
    `${formatSetting("rain", INCH_M / HOUR_S, u.system)} is in the place of the local design storm: find out yours.`,
  "holding.runoffLow": () => "Grass on wet soil about 0.3 to 0.5.",
  "holding.runoffHigh": () => "Roofs and paving 0.95; soaked soil comes near it.",
  "holding.pumpMargin": () => "Pumps for 1.5 times the demand calculated.",
  "holding.pumpSpares": () =>
    "One spare, with its own power. LSU: several small pumps beat one large.",
  "time.dayFromH": DAYLIGHT,
  "time.dayToH": DAYLIGHT,
  "time.marginM": () =>
    "How far the top of levee stays above the water while it is built. Where the finished top has less freeboard, the finished top is required.",
  "time.setUpH": () =>
    "Calling people, clearing and stripping the line, first sand and bags on site.",
  "time.fillShare": () =>
    "Filling and placing go at the same rate (THW-E), so half fill and half lay.",
  "time.crews": () =>
    "Each crew has one continuous part of the line, fills and lays its own bags, and does one step at a time.",
  "time.shifts": () =>
    "Shifts in 24 hours, each with the people stated. A typical figure: nothing is timed until you enter your own.",
  "time.liftM": () =>
    "What a crew lays in one step, counted down from the mark on the stake. A lift as high as the levee builds one stretch after the other.",
};

/** The note beside a setting's source; null where there is none. */
export function settingNote(path: SettingPath, units: Units): string | null {
  return NOTES[path]?.(units) ?? null;
}

const STANDARD: Readonly<Record<string, SettingPath>> = {
  baseRatio: "section.baseRatio",
  crownM: "section.crownM",
  leastBaseRatio: "section.leastBaseRatio",
};

/** Notes of the figures of levee types, by type and key. */
const FIGURE_NOTES: Readonly<Record<string, Note>> = {
  "braced-wall widthM": () => "Two bags side by side; no published cross-section gives it.",
  spacingM: (u) =>
    `Stakes at ${u.figure(6 * FOOT_M)}, kickers of ${u.figure(10 * FOOT_M)} of 2 by 4 lumber to stakes of ${u.figure(2 * FOOT_M)}: DWR-03 gives them for a topping of lumber and sacks.`,
  "earth-levee crownM": (u) =>
    `Sources disagree: at least ${u.figure(5 * FOOT_M)} (IS-280), ${u.figure(3 * FOOT_M)} (LSU), ${u.figure(10 * FOOT_M)} to ${u.figure(12 * FOOT_M)} to drive on (EM1913-78).`,
  "earth-levee runWater": () => "2.5 (IS-280); 3 on both sides (LSU); clay 2, sand 3 (IL-RET).",
  "earth-levee runLand": () =>
    "Clay 2, sand 3 (IL-RET); 3 is taken until the earth is known to be clay.",
  "lumber-topping widthM": () =>
    "Two sacks side by side; DWR-03 says back it with sacks or tamped earth and gives no width.",
  "plywood-box widthRatio": (u) =>
    `Sources disagree by 2.4 times: twice the height of the fill (FFO-96), ${u.small(30 * INCH_M)} for ${u.figure(3 * FOOT_M)}, which is 0.83 (DWR-03).`,
  "plywood-box spacingM": () => "Half the length of a plywood panel.",
  "raised raiseM": (u) =>
    `A raise of ${u.figure(FOOT_M)} to ${u.figure(2 * FOOT_M)} is common practice. What is already built is taken as this much below the top of levee.`,
};

/** The note beside the source of a levee type's figure; null where there is none. */
export function figureNote(typeId: string, key: string, units: Units): string | null {
  const note = FIGURE_NOTES[`${typeId} ${key}`] ?? FIGURE_NOTES[key];
  if (note) return note(units);
  const path = STANDARD[key];
  return path ? settingNote(path, units) : null;
}

/** What the accuracy of elevation data is taken to be while nobody has stated it, and whose figure that is. */
export function typicalAccuracyNotes(
  { rmseM, kind, source }: TypicalAccuracy,
  system: UnitSystem,
): string[] {
  return [
    `Left empty, ${formatLength(rmseM, system, 2)}: typical of cells of this size (${kind}).`,
    `Source: ${source}.`,
    "Enter what the report of the survey says.",
  ];
}

/** Sets a figure back to what is typical of the cell size. */
export function backToTypicalWords(label: string, rmseM: number, system: UnitSystem): string {
  return `Set ${label} back to ${formatLength(rmseM, system, 2)}, typical of the cell size`;
}
