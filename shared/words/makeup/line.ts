import { bagOrder } from "../../bag-order.ts";
import { BOND_TRENCH_OVER_M } from "../../checks/height.ts";
import { FOOT_M } from "../../constants.ts";
import { SETTINGS } from "../../settings.ts";
import { waterElevationAtGauge } from "../../stage.ts";
import {
  formatArea,
  formatCount,
  formatElevation,
  formatLength,
  formatStation,
  formatVolume,
} from "../../units.ts";
import { settingNote } from "../setting-notes.ts";
import { unitsOf } from "../units.ts";
import {
  anchor,
  bagVolume,
  built,
  cratesWords,
  given,
  inBags,
  type Makeup,
  type MakeupInputs,
  ofItLoose,
  ownLimits,
  sheetInputs,
  withoutSheet,
} from "./inputs.ts";
import { loosePart, MATERIAL_MAKEUPS } from "./materials.ts";

type Words = (inputs: MakeupInputs) => Makeup;

/** Names of the numbers that have a make-up. */
export type MakeupKey = keyof typeof MAKEUPS;

const VOLUME_SOURCE = "KHAMIS, VOSE (average end area and prismoidal rule)";
const WALKED = "Integrated along the walk, whatever the station interval.";

/** How a number was made, in the person's units: formula, inputs and source. */
export function makeup(key: MakeupKey, inputs: MakeupInputs): Makeup {
  return MAKEUPS[key](inputs);
}

const MAKEUPS = {
  ...MATERIAL_MAKEUPS,
  waterM: ({ plan, system }) => {
    const { water } = plan;
    const byStage = water.by === "stage";
    const offset = water.datumOffsetM;
    const inputs = byStage
      ? [
          given("gauge zero", "water.gaugeZeroM", water.gaugeZeroM, system),
          given("stage", "water.stageM", water.stageM, system),
          offset === null
            ? { name: "datum offset", value: "none stated: taken as the same datum" }
            : given("datum offset", "water.datumOffsetM", offset, system),
        ]
      : [given("water elevation", "water.elevationM", water.elevationM, system)];
    return {
      formula: byStage
        ? "water = gauge zero + stage + datum offset, less the fall from the gauge"
        : "water = the elevation given, less the fall along the flow",
      inputs: [...inputs, given("fall", "water.fallPerM", water.fallPerM, system)],
      source: "NWS-D, USGS-D",
    };
  },
  crestM: ({ plan, system }) => ({
    formula: "top of levee = water + freeboard",
    inputs: [
      {
        name: "water where it is given",
        value: formatElevation(waterElevationAtGauge(plan.water), system),
      },
      given("freeboard", "water.freeboardM", plan.water.freeboardM, system),
    ],
    source: SETTINGS["water.freeboardM"].source,
  }),
  lengthM: ({ line, system }) => ({
    formula: "length = the legs added up, on the WGS 84 ellipsoid",
    inputs: [
      { name: "corners", value: formatCount(line.cornersM.length) },
      { name: "kind", value: line.kind === "ring" ? "ring, closed" : "line, open" },
      { name: "length", value: formatLength(line.totals.lengthM, system, 1) },
    ],
    source: "geometry",
  }),
  builtLengthM: ({ totals, system }) => ({
    formula: "built length = length where the top of levee is above the ground",
    inputs: [{ name: "whole length", value: formatLength(totals.lengthM, system, 0) }],
    source: WALKED,
  }),
  enclosedM2: ({ line, system }) => ({
    formula: "area inside the ring, on the plan plane",
    inputs: [
      {
        name: "enclosed",
        value: line.enclosedM2 === null ? "–" : formatArea(line.enclosedM2, system),
      },
    ],
    source: "geometry",
  }),
  greatestHeightM: ({ totals, system }) => ({
    formula: "greatest height = top of levee − lowest ground under the base",
    inputs: [
      { name: "at station", value: formatStation(totals.greatestHeightAtM, system) },
      { name: "greatest height", value: formatLength(totals.greatestHeightM, system) },
    ],
    source: "The ground across the line is cut at every half cell.",
  }),
  lengthOverLimitM: ({ plan, line, totals, system }) => ({
    formula: "length where the greatest height passes the limit of what is built there",
    inputs: [
      ...ownLimits(line, system),
      given("limit", "practice.limitM", plan.practice.limitM, system),
      { name: "built length", value: formatLength(totals.builtLengthM, system, 0) },
    ],
    source: `${SETTINGS["practice.limitM"].source}. ${settingNote("practice.limitM", unitsOf(system))}`,
  }),
  lengthOver3FtM: ({ totals, system }) => ({
    formula: `length where the greatest height passes ${unitsOf(system).figure(BOND_TRENCH_OVER_M)}: bond trench and stripped sod`,
    inputs: [{ name: "built length", value: formatLength(totals.builtLengthM, system, 0) }],
    source: "NDSU-11",
  }),
  lengthNoDataM: ({ totals, system }) => ({
    formula: "length without elevation data under the levee; nothing of it is in the totals",
    inputs: [{ name: "whole length", value: formatLength(totals.lengthM, system, 0) }],
    source: "A gap in the elevation data is never taken as ground.",
  }),
  volumeM3: ({ plan, line, totals, system }) => ({
    formula: "volume = Σ (A₁ + A₂) / 2 × step, average end areas",
    inputs: [
      { name: "built length", value: formatLength(totals.builtLengthM, system, 0) },
      { name: "step of the walk", value: formatLength(line.stepM, system, 2) },
      given("base over height", "section.baseRatio", plan.section.baseRatio, system),
      given("crown", "section.crownM", plan.section.crownM, system),
      { name: "by the prismoidal rule", value: formatVolume(totals.prismoidalVolumeM3, system) },
    ],
    source: VOLUME_SOURCE,
  }),
  prismoidalVolumeM3: ({ line, totals, system }) => ({
    formula: "volume = Σ (A₁ + 4 Aₘ + A₂) / 6 × two steps, Aₘ cut half way",
    inputs: [
      { name: "step of the walk", value: formatLength(line.stepM, system, 2) },
      { name: "by average end areas", value: formatVolume(totals.volumeM3, system) },
    ],
    source: VOLUME_SOURCE,
  }),
  bagsPlaced: ({ plan, totals, system }) => ({
    formula: "bags placed = volume / volume of one placed bag",
    inputs: [...inBags(totals, plan, system), bagVolume(plan, system)],
    source: SETTINGS["section.bag.placedVolumeM3"].source,
  }),
  bagOrder: ({ totals, system }) => {
    const { placed, spare, onPolySheeting } = bagOrder(totals);
    return {
      formula: "order = bags placed + spares + bags that weight the poly sheeting down",
      inputs: [
        { name: "placed in the levee", value: formatCount(placed) },
        { name: "spares", value: formatCount(spare) },
        { name: "on the poly sheeting", value: formatCount(onPolySheeting) },
        { name: "empty bags to bring", value: cratesWords(totals, system) },
      ],
      source: `spares ${SETTINGS["practice.spareShare"].source}; poly sheeting NDSU-11; crates MVR`,
    };
  },
  bags: ({ plan, totals, system }) => ({
    formula: "bags = volume / volume of one placed bag × (1 + spares)",
    inputs: [
      ...inBags(totals, plan, system),
      bagVolume(plan, system),
      given("spares", "practice.spareShare", plan.practice.spareShare, system),
    ],
    source: `${SETTINGS["section.bag.placedVolumeM3"].source}; spares ${SETTINGS["practice.spareShare"].source}`,
  }),
  sheetBags: ({ plan, totals, system }) => ({
    formula: "bags on the poly sheeting = sand for them × built length / volume of one placed bag",
    inputs: [anchor(plan, system), built(totals, system), bagVolume(plan, system)],
    source: "NDSU-11",
  }),
  sandM3: ({ plan, line, totals, system }) => ({
    formula:
      "sand = bags × volume of one bag × (1 + waste) + sand for the bags on the poly sheeting, and what is filled loose",
    inputs: [
      ...ofItLoose(totals, system),
      ...withoutSheet(line, system),
      { name: "bags", value: formatCount(totals.bags) },
      bagVolume(plan, system),
      given("waste", "practice.wasteShare", plan.practice.wasteShare, system),
      anchor(plan, system),
      built(totals, system),
    ],
    source: `NDSU-11; waste ${SETTINGS["practice.wasteShare"].source}`,
  }),
  sandDryKg: ({ plan, totals, system }) => ({
    formula: "weight = sand × density, dry and loose",
    inputs: [
      { name: "sand", value: formatVolume(totals.sandM3, system) },
      given("dry sand", "practice.sandDryKgPerM3", plan.practice.sandDryKgPerM3, system),
    ],
    source: SETTINGS["practice.sandDryKgPerM3"].source,
  }),
  sandWetKg: ({ plan, totals, system }) => ({
    formula: "weight = sand × density, wet",
    inputs: [
      { name: "sand", value: formatVolume(totals.sandM3, system) },
      given("wet sand", "practice.sandWetKgPerM3", plan.practice.sandWetKgPerM3, system),
    ],
    source: SETTINGS["practice.sandWetKgPerM3"].source,
  }),
  trucks: ({ plan, totals, system }) => ({
    formula: "trucks = sand / load of one truck, rounded up",
    inputs: [
      { name: "sand", value: formatVolume(totals.sandM3, system) },
      given("load of one truck", "practice.truckM3", plan.practice.truckM3, system),
    ],
    source: SETTINGS["practice.truckM3"].source,
  }),
  sheetWidthM: ({ plan, system }) => ({
    formula: "width = beyond the toe + sloping face + crown + tail, where it is widest",
    inputs: sheetInputs(plan, system),
    source: `NDSU-11; MVS requires ${unitsOf(system).figure(2 * FOOT_M)} beyond the toe`,
  }),
  sheetM2: ({ plan, totals, system }) => ({
    formula: "poly sheeting = its width along the built length; laps come on top",
    inputs: [...sheetInputs(plan, system), built(totals, system)],
    source: "NDSU-11",
  }),
  sheetRolls: ({ plan, totals, system }) => ({
    formula: "rolls = ⌈(built length − lap) / (roll − lap)⌉ × strips side by side",
    inputs: [
      built(totals, system),
      given("roll length", "section.sheet.rollLengthM", plan.section.sheet.rollLengthM, system),
      given("roll width", "section.sheet.rollWidthM", plan.section.sheet.rollWidthM, system),
      given("lap", "section.sheet.lapM", plan.section.sheet.lapM, system),
      { name: "widest poly sheeting", value: formatLength(totals.sheetWidthM, system) },
    ],
    source: "MVS, MO-2217, DWR-03 (rolls); NDSU-11 (lap, upstream over downstream)",
  }),
  jobPersonHours: ({ plan, line, totals, system }) => ({
    formula: "person-hours = bags / rate of the whole job",
    inputs: [
      ...loosePart({ plan, line, totals, system }),
      { name: "bags", value: formatCount(totals.bags) },
      given("bags per person-hour", "practice.jobRate", plan.practice.jobRate, system),
    ],
    source: `${SETTINGS["practice.jobRate"].source}. ${settingNote("practice.jobRate", unitsOf(system))}`,
  }),
  taskPersonHours: ({ plan, totals, system }) => ({
    formula: "person-hours = bags / rate of one task, filling or placing",
    inputs: [
      { name: "bags", value: formatCount(totals.bags) },
      given("slow", "practice.taskRateLow", plan.practice.taskRateLow, system),
      given("fast", "practice.taskRateHigh", plan.practice.taskRateHigh, system),
    ],
    source: SETTINGS["practice.taskRateLow"].source,
  }),
  groundSpread: ({ plan, line, totals, system }) => ({
    formula:
      "the least order that is enough on so many of the grounds tried: elevation data + error, each cut across and counted again",
    inputs: [
      { name: "order on the ground as used", value: formatCount(bagOrder(totals).total) },
      given("RMSE of the elevation data", "ground.rmseM", line.groundAccuracy.rmseM, system),
      given("the same everywhere", "ground.biasShare", plan.ground.biasShare, system),
      given(
        "alike within the range",
        "ground.correlatedShare",
        plan.ground.correlatedShare,
        system,
      ),
      given("range", "ground.rangeM", plan.ground.rangeM, system),
    ],
    source: `${line.groundAccuracy.source}. How the error is made up: ${SETTINGS["ground.biasShare"].source}. Errors that differ from place to place partly cancel.`,
  }),
} as const satisfies Record<string, Words>;
