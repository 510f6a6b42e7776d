import { DEFAULT_HOLDING, holdingOf } from "../../../shared/defaults.ts";
import type { HoldingSettings, Plan } from "../../../shared/plan.ts";
import { UPLIFT_NAMES } from "../../../shared/words/holding.ts";
import { SOIL_NAMES } from "../../../shared/words/soils.ts";
import { edit } from "../../document/edits/alternatives.ts";
import type { SettingLine } from "../../document/edits/settings.ts";
import { plan } from "../../document/store.ts";
import { Source } from "../../ui/source.tsx";
import { SettingRow } from "../setting-row.tsx";

const STANDING: readonly SettingLine[] = [
  { path: "holding.frictionLow", label: "Friction, low" },
  { path: "holding.frictionHigh", label: "Friction, high" },
  { path: "holding.leveeKgPerM3", label: "Levee as built" },
  { path: "holding.slidingFactor", label: "Required against sliding" },
  { path: "holding.overturningFactor", label: "Required against overturning" },
];
const THROUGH: readonly SettingLine[] = [
  { path: "holding.fillLowMPerS", label: "Bag fill lets through, low" },
  { path: "holding.fillHighMPerS", label: "Bag fill lets through, high" },
  { path: "holding.sheetCutLow", label: "Poly sheeting cuts seepage, at least" },
  { path: "holding.sheetCutHigh", label: "Poly sheeting cuts seepage, at most" },
];
const UNDER: readonly SettingLine[] = [
  { path: "holding.underDepthM", label: "Pervious soil, depth" },
  { path: "holding.underLowMPerS", label: "Soil lets through, low" },
  { path: "holding.underHighMPerS", label: "Soil lets through, high" },
  { path: "holding.trenchLowM", label: "Toe set in, at least" },
  { path: "holding.trenchHighM", label: "Toe set in, at most" },
];
const RAIN: readonly SettingLine[] = [
  { path: "holding.rainMPerS", label: "Rain" },
  { path: "holding.runoffLow", label: "Share that runs off, low" },
  { path: "holding.runoffHigh", label: "Share that runs off, high" },
];
const PUMPS: readonly SettingLine[] = [
  { path: "holding.pumpMargin", label: "Pumps over the most that comes" },
  { path: "holding.pumpSpares", label: "Spare pumps" },
];

/** What standing is judged by. */
export function StandingInputs() {
  return (
    <>
      <Choice
        label="Uplift"
        of="uplift"
        names={UPLIFT_NAMES}
        source={[
          "Water pressing up under the base: falling to nothing at a drained inner toe, in full where that toe is under water. Keep it drained.",
          "Source: FEMA P-259, from memory.",
        ]}
      />
      <Settings lines={STANDING} />
    </>
  );
}

/** What seepage is judged by. */
export function SeepageInputs() {
  return (
    <>
      <Choice
        label="Soil below"
        of="soil"
        names={SOIL_NAMES}
        source={[
          "Named as in the creep tables. Sand and silt let water come up behind the levee.",
          "Source: Lane and Bligh, tables from memory.",
        ]}
      />
      <SheetLaid />
      <Settings lines={THROUGH} />
      <Settings lines={UNDER} />
    </>
  );
}

/** The rain to pump against. */
export function RainInputs() {
  return <Settings lines={RAIN} />;
}

/** How many pumps beyond what is needed. */
export function PumpInputs() {
  return <Settings lines={PUMPS} />;
}

function Settings({ lines }: { readonly lines: readonly SettingLine[] }) {
  return (
    <>
      {lines.map((line) => (
        <SettingRow key={line.path} {...line} />
      ))}
    </>
  );
}

type Chosen = "uplift" | "soil";

interface ChoiceProps<Key extends Chosen> {
  readonly label: string;
  readonly of: Key;
  readonly names: Readonly<Record<HoldingSettings[Key], string>>;
  readonly source: readonly string[];
}

function Choice<Key extends Chosen>({ label, of, names, source }: ChoiceProps<Key>) {
  const options = Object.entries(names) as [HoldingSettings[Key], string][];
  const choose = (value: HoldingSettings[Key]) =>
    changeHolding(`Change ${label.toLowerCase()}`, { [of]: value });
  return (
    <div class="setting">
      <label class="select-row holding-select">
        {label}
        <select
          value={holdingOf(plan.value)[of]}
          onChange={(event) => choose(event.currentTarget.value as HoldingSettings[Key])}
        >
          {options.map(([value, name]) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <Source about={label} lines={[`Default: ${names[DEFAULT_HOLDING[of]]}.`, ...source]} />
    </div>
  );
}

function SheetLaid() {
  const { sheetLaid } = holdingOf(plan.value);
  const label = "Poly sheeting laid on the waterside";
  return (
    <div class="setting">
      <label class="check-line holding-check">
        <input
          type="checkbox"
          checked={sheetLaid}
          onChange={() =>
            changeHolding(sheetLaid ? "Leave the poly sheeting out" : "Lay the poly sheeting", {
              sheetLaid: !sheetLaid,
            })
          }
        />
        {label}
      </label>
      <Source
        about={label}
        lines={["Default: laid.", "Less water comes through with it. Source: EFT-94, NDSU-11."]}
      />
    </div>
  );
}

function changeHolding(note: string, change: Partial<HoldingSettings>): void {
  edit({
    note,
    change: (now: Plan) => ({ ...now, holding: { ...holdingOf(now), ...change } }),
  });
}
