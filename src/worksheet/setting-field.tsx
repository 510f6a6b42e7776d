import type { ComponentChildren } from "preact";
import { changeSetting, type SettingLine, settingValue } from "../document/edits/settings.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import { NumberField } from "../ui/number-field.tsx";
import { settingQuantity } from "../ui/quantity.ts";
import { rangeOf } from "../ui/range.ts";

export interface SettingFieldProps extends SettingLine {
  /** Shown in an empty field; makes an empty field allowed. */
  readonly blank?: string | undefined;
  /** For figures that have no default (a stage, a gauge zero): what is refused does not speak of one. */
  readonly noDefault?: boolean | undefined;
  readonly children?: ComponentChildren;
}

/** The field of one adjustable figure, and what stands beside it; its source may be shown elsewhere. */
export function SettingField({ path, label, blank, noDefault, children }: SettingFieldProps) {
  return (
    <div class="setting" data-setting={path}>
      <NumberField
        system={unitSystem.value}
        label={label}
        value={settingValue(plan.value, path)}
        quantity={settingQuantity(path, !noDefault)}
        range={rangeOf(path)}
        blank={blank}
        onValue={(value, gesture) => changeSetting(path, label, value, gesture)}
      />
      {children}
    </div>
  );
}
