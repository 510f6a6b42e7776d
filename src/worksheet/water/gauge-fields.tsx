import type { Water } from "../../../shared/plan.ts";
import { formatElevation, formatLength, type UnitSystem } from "../../../shared/units.ts";
import { edit } from "../../document/edits/alternatives.ts";
import { plan } from "../../document/store.ts";
import { tool, unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { Icon } from "../../ui/icons.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { SettingRow } from "../setting-row.tsx";
import { ToolButton } from "../tool-button.tsx";

/** What a stage counts from, and how the gauge's datum meets the ground's. */
export function GaugeFields() {
  const { water, gauge } = plan.value;
  return (
    <Disclosure
      id="gauge"
      title="Gauge and datum"
      level="part"
      summary={summaryWords(water, unitSystem.value)}
    >
      <SettingRow path="water.gaugeZeroM" label="Gauge zero" noDefault />
      <SettingRow
        path="water.datumOffsetM"
        label="Gauge datum to elevation-data datum"
        blank="none"
        noDefault
      />
      {water.datumOffsetM === null ? (
        <p class="hint">
          Blank: gauge and elevation data are taken as the same datum. If they differ, enter the
          offset here.
        </p>
      ) : (
        <TextField
          label="Source of the offset"
          placeholder="converter, date"
          maxLength={500}
          value={water.datumNote}
          onText={(datumNote) =>
            edit({
              note: "Note the datum offset",
              change: (now) => ({ ...now, water: { ...now.water, datumNote } }),
            })
          }
        />
      )}
      <div class="named-row">
        <ToolButton tool="place-gauge" icon="gauge">
          {gauge ? "Move it" : "Place on the map"}
        </ToolButton>
        {gauge && <GaugeName name={gauge.name} />}
      </div>
    </Disclosure>
  );
}

function GaugeName({ name }: { name: string }) {
  return (
    <>
      <TextField
        label="Name of the gauge"
        labelHidden
        value={name}
        placeholder="name"
        onText={(next) =>
          edit({
            note: "Rename the gauge",
            change: (now) => ({ ...now, gauge: now.gauge && { ...now.gauge, name: next } }),
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
    </>
  );
}

function summaryWords({ gaugeZeroM, datumOffsetM }: Water, system: UnitSystem): string {
  const zero = `zero ${formatElevation(gaugeZeroM, system)}`;
  if (datumOffsetM === null) return `${zero}, offset not stated`;
  return `${zero}, offset ${formatLength(datumOffsetM, system, 2)}`;
}
