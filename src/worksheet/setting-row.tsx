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
import { settingQuantity } from "../ui/quantity.ts";
import { Source } from "../ui/source.tsx";
import { SettingField, type SettingFieldProps } from "./setting-field.tsx";

/** One adjustable figure: its field, where its default comes from, and a way back to it. */
export function SettingRow(props: SettingFieldProps) {
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

function Row({ path, label, blank, noDefault }: SettingFieldProps) {
  const setting: Setting = SETTINGS[path];
  const changed = !noDefault && !isStandard(plan.value, path);
  const standard = settingQuantity(path).format(setting.defaultSI, unitSystem.value);
  return (
    <SettingField path={path} label={label} blank={blank} noDefault={noDefault}>
      <Source
        about={label}
        lines={[
          noDefault ? null : `Default ${standard}.`,
          settingNote(path, unitsOf(unitSystem.value)),
          `Source: ${setting.source}.`,
        ]}
      />
      {changed && (
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
    </SettingField>
  );
}
