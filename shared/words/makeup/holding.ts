import { holdingOf } from "../../defaults.ts";
import type { Holding, Spread } from "../../holding/types.ts";
import type { HoldingSettings, Plan } from "../../plan.ts";
import { formatSetting } from "../../setting-text.ts";
import { SETTINGS, type SettingPath } from "../../settings.ts";
import {
  formatArea,
  formatElevation,
  formatFlow,
  formatFlowRange,
  formatHours,
  formatLength,
  formatUnitFlow,
  type UnitSystem,
} from "../../units.ts";
import type { Input, Makeup } from "./inputs.ts";

export interface HoldingMakeupInputs {
  readonly plan: Plan;
  readonly holding: Holding;
  readonly system: UnitSystem;
}

/** Names of the numbers about holding that have a make-up. */
export type HoldingMakeupKey = keyof typeof MAKEUPS;

type Words = (inputs: HoldingMakeupInputs) => Makeup;

/** How a number about holding was made, in the person's units: formula, inputs and source. */
export function holdingMakeup(key: HoldingMakeupKey, inputs: HoldingMakeupInputs): Makeup {
  return MAKEUPS[key](inputs);
}

const MAKEUPS = {
  sliding: (inputs) => ({
    formula: "factor = friction × (weight − uplift) / thrust; thrust = γ h² / 2",
    inputs: [
      ...givens(inputs, ["frictionLow", "frictionHigh", "leveeKgPerM3", "slidingFactor"]),
      { name: "uplift under the base", value: holdingOf(inputs.plan).uplift },
      ...depth(inputs, "sliding"),
    ],
    source:
      "Thrust: NDSU-NR. Uplift, friction and the required factor: from memory (FEMA P-259). No water weight on the face, no help from trench or toe.",
  }),
  overturning: (inputs) => ({
    formula:
      "factor = weight × its arm / (thrust × h / 3 + uplift × its arm), about the landside toe",
    inputs: [
      ...givens(inputs, ["leveeKgPerM3", "overturningFactor"]),
      { name: "uplift under the base", value: holdingOf(inputs.plan).uplift },
      ...depth(inputs, "overturning"),
    ],
    source: "Thrust: NDSU-NR. Uplift and the required factor: from memory (FEMA P-259).",
  }),
  throughM3PerS: (inputs) => ({
    formula: "seepage through = Σ k × what the cross-section lets pass × step",
    inputs: [
      ...givens(inputs, ["fillLowMPerS", "fillHighMPerS", "sheetCutLow", "sheetCutHigh"]),
      {
        name: "without poly sheeting",
        value: flows(inputs, inputs.holding.seepage.throughBareM3PerS),
      },
      {
        name: "with poly sheeting",
        value: flows(inputs, inputs.holding.seepage.throughSheetM3PerS),
      },
      {
        name: "most, per length",
        value: formatUnitFlow(inputs.holding.seepage.worstM2PerS.high, inputs.system),
      },
    ],
    source:
      "By the slope of the landside face: Schaffernak below 30° (DAS), L. Casagrande to 60° (VENK), the base parabola (VENK), Dupuit where it is upright (DUP). Conductivity from memory; what the poly sheeting takes off is common practice, no source.",
  }),
  underM3PerS: (inputs) => ({
    formula: "seepage under = Σ k × head / base × depth × step",
    inputs: [
      ...givens(inputs, ["underDepthM", "underLowMPerS", "underHighMPerS"]),
      { name: "under", value: flows(inputs, inputs.holding.seepage.underM3PerS) },
    ],
    source: "Darcy (VENK, HOUGH); conductivities TP-K. Poly sheeting takes nothing off it.",
  }),
  totalM3PerS: (inputs) => {
    const { throughBareM3PerS, throughSheetM3PerS, underM3PerS, totalM3PerS } =
      inputs.holding.seepage;
    const { sheetLaid } = holdingOf(inputs.plan);
    return {
      formula: "seepage = through + under",
      inputs: [
        {
          name: sheetLaid ? "through, with poly sheeting" : "through, without poly sheeting",
          value: flows(inputs, sheetLaid ? throughSheetM3PerS : throughBareM3PerS),
        },
        { name: "under", value: flows(inputs, underM3PerS) },
        { name: "together", value: flows(inputs, totalM3PerS) },
      ],
      source: "Leaks at joints and closures are not counted: no published figure was found.",
    };
  },
  creep: (inputs) => {
    const { creep } = inputs.holding;
    const ratio = (value: number | undefined) => (value === undefined ? "0" : value.toFixed(1));
    return {
      formula: "Lane = (base / 3 + 2 × trench) / head; Bligh = (base + 2 × trench) / head",
      inputs: [
        ...givens(inputs, ["trenchLowM"]),
        { name: "Lane", value: ratio(creep?.lane) },
        { name: "Bligh", value: ratio(creep?.bligh) },
      ],
      source: "Lane and Bligh: the rule is published, the tables are from memory.",
    };
  },
  exitGradient: (inputs) => ({
    formula: "gradient = head / d / (π √λ), λ = (1 + √(1 + (base / d)²)) / 2",
    inputs: [
      ...givens(inputs, ["trenchLowM", "trenchHighM"]),
      {
        name: "gradient",
        value: inputs.holding.exit
          ? spread(inputs.holding.exit.gradient.low, inputs.holding.exit.gradient.high)
          : "0",
      },
    ],
    source: "Khosla, from memory, on deep pervious soil; what was seen at gradients: NIX-11.",
  }),
  rainM3PerS: (inputs) => ({
    formula: "rain inside = runoff coefficient × rain × area inside",
    inputs: [
      ...givens(inputs, ["runoffLow", "runoffHigh", "rainMPerS"]),
      {
        name: "rain inside",
        value: inputs.holding.pumping.rainM3PerS
          ? flows(inputs, inputs.holding.pumping.rainM3PerS)
          : "0: the area that drains to a line is not known",
      },
    ],
    source: "RAT (rational method); coefficients from memory.",
  }),
  demandM3PerS: (inputs) => {
    const { rainM3PerS, demandM3PerS } = inputs.holding.pumping;
    return {
      formula: "to be pumped = rain inside + seepage",
      inputs: [
        {
          name: "rain inside",
          value: rainM3PerS ? flows(inputs, rainM3PerS) : "not stated for a line",
        },
        { name: "seepage", value: flows(inputs, inputs.holding.seepage.totalM3PerS) },
        { name: "together", value: flows(inputs, demandM3PerS) },
      ],
      source: "LSU: rain, seepage and leaks make the demand. Leaks are not counted.",
    };
  },
  capacityM3PerS: (inputs) => {
    const { demandM3PerS, proposed } = inputs.holding.pumping;
    return {
      formula: "pumps for = the higher demand × margin, at the lower end of each class",
      inputs: [
        { name: "demand", value: flows(inputs, demandM3PerS) },
        ...givens(inputs, ["pumpMargin", "pumpSpares"]),
        {
          name: "one pump",
          value: proposed ? formatFlow(proposed.eachM3PerS, inputs.system) : "0",
        },
      ],
      source: "Classes: PWM. Several small beat one large: LSU. Margin and spare from memory.",
    };
  },
  insideM: (inputs) => {
    const { inside } = inputs.holding;
    const { system } = inputs;
    return {
      formula:
        "level inside = where what came in fills the ground inside, from its lowest place up",
      inputs: inside
        ? [
            { name: "lowest place", value: formatElevation(inside.lowestM, system) },
            { name: "area inside the toes", value: formatArea(inside.areaM2, system) },
            {
              name: "a building is wet at",
              value:
                inside.structureM === null
                  ? "not stated"
                  : formatElevation(inside.structureM, system),
            },
          ]
        : [{ name: "ground inside", value: "not stated" }],
      source:
        "The ground as sampled; buildings store no water. Low: seepage alone without rain; high: with the rain going on.",
    };
  },
  hoursToStructure: (inputs) => {
    const { hoursToStructure, demandM3PerS } = inputs.holding.pumping;
    const { totalM3PerS } = inputs.holding.seepage;
    const { system } = inputs;
    const hours = (value: number | null) => (value === null ? "not stated" : formatHours(value));
    const wetM = inputs.holding.inside?.structureM ?? null;
    return {
      formula: "hours = what fits on the ground inside below the building / what comes in",
      inputs: [
        {
          name: "a building is wet at",
          value: wetM === null ? "not stated" : formatElevation(wetM, system),
        },
        { name: "most that comes in", value: formatFlow(demandM3PerS.high, system) },
        { name: "soonest", value: hours(hoursToStructure.soonest) },
        { name: "least that comes in, without rain", value: formatFlow(totalM3PerS.low, system) },
        { name: "latest", value: hours(hoursToStructure.latest) },
      ],
      source: "The ground as sampled; basements and what soaks in are not counted.",
    };
  },
  oneFails: (inputs) => {
    const { proposed, oneFails, demandM3PerS } = inputs.holding.pumping;
    const left = proposed ? (proposed.working - 1) * proposed.eachM3PerS : 0;
    return {
      formula: "the water gains by = the most that comes in − what the pumps left carry",
      inputs: [
        { name: "most that comes in", value: formatFlow(demandM3PerS.high, inputs.system) },
        { name: "pumps left carry", value: formatFlow(left, inputs.system) },
        {
          name: "the water gains by",
          value: formatFlow(oneFails?.excessM3PerS ?? 0, inputs.system),
        },
      ],
      source: "Each pump at the lower end of its class (PWM); the spare not yet started.",
    };
  },
  raiseM: (inputs) => ({
    formula: "could carry = base / least base ratio, and never past the height limit",
    inputs: [
      path(
        inputs,
        "least base, times the height",
        "section.leastBaseRatio",
        inputs.plan.section.leastBaseRatio,
      ),
      path(inputs, "height limit", "practice.limitM", inputs.plan.practice.limitM),
      {
        name: "least room to raise",
        value: formatLength(inputs.holding.raise?.leastM ?? 0, inputs.system),
      },
    ],
    source: SETTINGS["section.leastBaseRatio"].source,
  }),
} as const satisfies Record<string, Words>;

type NumberKey = {
  [K in keyof HoldingSettings]: HoldingSettings[K] extends number ? K : never;
}[keyof HoldingSettings];

const NAMES: Readonly<Record<NumberKey, string>> = {
  frictionLow: "friction, low",
  frictionHigh: "friction, high",
  leveeKgPerM3: "levee as built",
  slidingFactor: "required against sliding",
  overturningFactor: "required against overturning",
  fillLowMPerS: "conductivity of the fill, low",
  fillHighMPerS: "conductivity of the fill, high",
  sheetCutLow: "the poly sheeting takes off at least",
  sheetCutHigh: "the poly sheeting takes off at most",
  underDepthM: "depth of pervious soil",
  underLowMPerS: "its conductivity, low",
  underHighMPerS: "its conductivity, high",
  trenchLowM: "toe set in, at least",
  trenchHighM: "toe set in, at most",
  rainMPerS: "rain",
  runoffLow: "runoff coefficient, low",
  runoffHigh: "runoff coefficient, high",
  pumpMargin: "margin",
  pumpSpares: "spare pumps",
};

function givens(inputs: HoldingMakeupInputs, keys: readonly NumberKey[]): Input[] {
  const holding = holdingOf(inputs.plan);
  return keys.map((key) => path(inputs, NAMES[key], `holding.${key}`, holding[key]));
}

function path(
  { system }: HoldingMakeupInputs,
  name: string,
  at: SettingPath,
  valueSI: number,
): Input {
  return { name, value: formatSetting(SETTINGS[at].kind, valueSI, system) };
}

function depth(
  { holding, system }: HoldingMakeupInputs,
  against: "sliding" | "overturning",
): Input[] {
  if (!holding.standing) return [];
  const { waterDepthM } = holding.standing[against];
  return [{ name: "water there", value: formatLength(waterDepthM, system) }];
}

function flows({ system }: HoldingMakeupInputs, range: Spread): string {
  return formatFlowRange(range, system);
}

function spread(low: number, high: number): string {
  return `${low.toFixed(2)} to ${high.toFixed(2)}`;
}
