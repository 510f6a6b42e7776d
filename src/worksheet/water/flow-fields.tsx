import { formatSetting } from "../../../shared/setting-text.ts";
import { bearingOf, flowToward, siteMiddle } from "../../document/edits/site.ts";
import { apply, plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { BEARING } from "../../ui/quantity.ts";
import { SettingRow } from "../setting-row.tsx";
import { ToolButton } from "../tool-button.tsx";

/** How steeply and which way the river falls, for a water surface that is not level. */
export function FlowFields() {
  const { flow, gauge, water } = plan.value;
  const from = gauge?.at ?? siteMiddle(plan.value, ground.value);
  const fall = formatSetting("slope", water.fallPerM, unitSystem.value);
  const summary = water.fallPerM > 0 ? `${fall}${flow ? "" : ", no direction yet"}` : "level";
  return (
    <Disclosure id="flow" title="Fall along the river" level="part" summary={summary}>
      <SettingRow path="water.fallPerM" label="Fall" noDefault />
      <div class="tool-row">
        <ToolButton tool="draw-flow" icon="arrow">
          {flow ? "Draw direction again" : "Draw direction"}
        </ToolButton>
      </div>
      {from && (
        <NumberField
          system={unitSystem.value}
          label="Direction the river runs, from north"
          value={flow ? bearingOf(flow) : null}
          quantity={BEARING}
          range={{ least: 0, most: 360 }}
          blank="none"
          onValue={(bearing, gesture) =>
            apply({
              note: bearing === null ? "Remove the flow direction" : "Turn the flow direction",
              gesture,
              change: (now) => ({
                ...now,
                flow: bearing === null ? null : flowToward(now.flow, from, bearing),
              }),
            })
          }
        />
      )}
    </Disclosure>
  );
}
