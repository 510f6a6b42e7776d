import type { Gauge, Water } from "../../../shared/plan.ts";
import { formatElevation, formatLength, type UnitSystem } from "../../../shared/units.ts";
import { gaugeSumWords } from "../../../shared/words/gauge-sum.ts";
import { verticalDatumWords } from "../../../shared/words/vertical-datum.ts";
import { nameGauge, removeGauge } from "../../document/edits/gauge.ts";
import { changeWater } from "../../document/edits/water.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { tool, unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { Fact } from "../../ui/fact.tsx";
import { Icon } from "../../ui/icons.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { SettingRow } from "../setting-row.tsx";
import { ToolButton } from "../tool-button.tsx";

/** What a stage counts from, how the gauge's datum meets the ground's, and the sum of it. */
export function GaugeFields() {
  const { water, gauge } = plan.value;
  return (
    <Disclosure
      id="gauge"
      title="Gauge and datum"
      level="part"
      summary={summaryWords(water, unitSystem.value)}
    >
      <TextField
        label="Name of the gauge"
        value={gauge?.name ?? ""}
        placeholder="river and place"
        maxLength={200}
        onText={nameGauge}
      />
      <SettingRow path="water.gaugeZeroM" label="Gauge zero" noDefault />
      <TextField
        label="Datum of the gauge"
        value={water.gaugeDatum ?? ""}
        placeholder="NGVD 29, NAVD 88, local"
        maxLength={200}
        onText={(gaugeDatum) => changeWater("Note the datum of the gauge", { gaugeDatum })}
      />
      <dl class="facts">
        <Fact name="Datum of the elevation data">
          {verticalDatumWords(plan.value, ground.value)}
        </Fact>
      </dl>
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
          onText={(datumNote) => changeWater("Note the datum offset", { datumNote })}
        />
      )}
      <GaugeSum water={water} />
      <GaugePlace gauge={gauge} />
    </Disclosure>
  );
}

/** Stage, zero and offset written out as a sum. */
function GaugeSum({ water }: { readonly water: Water }) {
  const datum = ground.value ? verticalDatumWords(plan.value, ground.value) : "";
  const sum = gaugeSumWords(water, datum, unitSystem.value);
  return sum === null ? null : (
    <p class="gauge-sum">
      Stage + zero{water.datumOffsetM === null ? "" : " + offset"}: <strong>{sum}</strong>
    </p>
  );
}

/** Where the gauge stands, if that is on the map; a gauge elsewhere needs no place. */
function GaugePlace({ gauge }: { readonly gauge: Gauge | null }) {
  return (
    <div class="named-row">
      <ToolButton tool="place-gauge" icon="gauge">
        {gauge?.at ? "Move it" : "Place on the map"}
      </ToolButton>
      {gauge?.at && (
        <button
          type="button"
          class="icon-button"
          aria-label="Remove the gauge from the map"
          onClick={() => {
            removeGauge();
            tool.value = "move";
          }}
        >
          <Icon name="trash" />
        </button>
      )}
    </div>
  );
}

function summaryWords({ gaugeZeroM, datumOffsetM }: Water, system: UnitSystem): string {
  const zero = `zero ${formatElevation(gaugeZeroM, system)}`;
  if (datumOffsetM === null) return `${zero}, offset not stated`;
  return `${zero}, offset ${formatLength(datumOffsetM, system, 2)}`;
}
