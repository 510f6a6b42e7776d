import { SETTINGS, type Setting } from "../../shared/settings.ts";
import { settingNote } from "../../shared/words/setting-notes.ts";
import { unitsOf } from "../../shared/words/units.ts";
import {
  changeSetting,
  isOwnFigure,
  isStandard,
  type SettingLine,
  settingValue,
} from "../document/edits/settings.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import { Icon } from "../ui/icons.tsx";
import { NumberField } from "../ui/number-field.tsx";
import { type Quantity, settingQuantity } from "../ui/quantity.ts";
import { rangeOf } from "../ui/range.ts";
import { Source } from "../ui/source.tsx";

interface SettingRowProps extends SettingLine {
  /** Shown in an empty field; makes an empty field allowed. */
  readonly blank?: string;
  /** Leaves out the way back to the default, for figures that have none (a stage, a gauge zero). */
  readonly noDefault?: boolean;
  /** The field alone: its source stands elsewhere. */
  readonly plain?: boolean;
}

/** One adjustable figure: its field, where its default comes from, and a way back to it. */
export function SettingRow(props: SettingRowProps) {
  return isOwnFigure(props.path) ? <OwnFigureRow {...props} /> : <Row {...props} />;
}

/** A figure that only the person can say: empty until they type it, or take the typical one. */
function OwnFigureRow({ path, label }: SettingLine) {
  const { defaultSI }: Setting = SETTINGS[path];
  const typical = settingQuantity(path).format(defaultSI, unitSystem.value);
  return (
    <>
      <Row path={path} label={label} blank={`typically ${typical}`} noDefault />
      {settingValue(plan.value, path) === null && (
        <button
          type="button"
          class="text-button"
          aria-label={`Use ${typical} for ${label}`}
          onClick={() => changeSetting(path, label, defaultSI)}
        >
          Use {typical}
        </button>
      )}
    </>
  );
}

function Row({ path, label, blank, noDefault, plain }: SettingRowProps) {
  const setting: Setting = SETTINGS[path];
  const quantity = noDefault ? withoutDefault(settingQuantity(path)) : settingQuantity(path);
  const changed = !noDefault && !isStandard(plan.value, path);
  const standard = quantity.format(setting.defaultSI, unitSystem.value);
  return (
    <div class="setting" data-setting={path}>
      <NumberField
        system={unitSystem.value}
        label={label}
        value={settingValue(plan.value, path)}
        quantity={quantity}
        range={rangeOf(path)}
        blank={blank}
        onValue={(value, gesture) => changeSetting(path, label, value, gesture)}
      />
      {!plain && (
        <Source
          about={label}
          lines={[
            noDefault ? null : `Default ${standard}.`,
            settingNote(path, unitsOf(unitSystem.value)),
            `Source: ${setting.source}.`,
          ]}
        />
      )}
      {changed && !plain && (
        <button
          type="button"
          class="icon-button setting-reset"
          aria-label={`Set ${label} back to ${standard}`}
          data-tip={`Back to ${standard}`}
          onClick={() => changeSetting(path, label, setting.defaultSI)}
        >
          <Icon name="reset" />
        </button>
      )}
    </div>
  );
}

/** The same quantity; what it refuses does not speak of a default that there is none of. */
function withoutDefault(quantity: Quantity): Quantity {
  return {
    ...quantity,
    parse: (text, system) => {
      const outcome = quantity.parse(text, system);
      if (outcome.ok) return outcome;
      const remedy = "Type a number, with its unit if it is another than the one shown.";
      return { ok: false, failure: { ...outcome.failure, remedy } };
    },
  };
}
