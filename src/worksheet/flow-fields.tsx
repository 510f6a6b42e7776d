import { apply, plan } from "../document/store.ts";
import { ground, tool } from "../state.ts";
import { Icon } from "../ui/icons.tsx";
import { NumberField } from "../ui/number-field.tsx";
import { BEARING } from "../ui/quantity.ts";
import { TextField } from "../ui/text-field.tsx";
import { edit } from "./alternative-edits.ts";
import { SettingRow } from "./setting-row.tsx";
import { bearingOf, flowToward, siteMiddle } from "./site-edits.ts";
import { ToolButton } from "./tool-button.tsx";

/** Where the gauge stands and which way the river falls, for a water surface that is not level. */
export function FlowFields() {
  const { flow, gauge } = plan.value;
  const from = gauge?.at ?? siteMiddle(plan.value, ground.value);
  return (
    <>
      <SettingRow path="water.fallPerM" label="Fall along the river" />
      <div class="tool-row">
        <ToolButton tool="draw-flow" icon="arrow">
          {flow ? "Draw direction again" : "Draw direction"}
        </ToolButton>
        <ToolButton tool="place-gauge" icon="gauge">
          {gauge ? "Move gauge" : "Place gauge"}
        </ToolButton>
      </div>
      {from && (
        <NumberField
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
      {gauge && (
        <div class="named-row">
          <TextField
            label="Gauge"
            value={gauge.name}
            placeholder="name"
            onText={(name) =>
              edit({
                note: "Rename the gauge",
                change: (now) => ({ ...now, gauge: now.gauge && { ...now.gauge, name } }),
              })
            }
          />
          <button
            type="button"
            class="icon-button"
            aria-label="Remove the gauge from the map"
            onClick={() => {
              edit({ note: "Remove the gauge", change: (now) => ({ ...now, gauge: null }) });
              tool.value = "move";
            }}
          >
            <Icon name="trash" />
          </button>
        </div>
      )}
    </>
  );
}
