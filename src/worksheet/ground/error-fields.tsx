import { Disclosure } from "../../ui/disclosure.tsx";
import { SettingRow } from "../setting-row.tsx";

/** How the error of the elevation data is made up, and what corrects all of it. */
export function ErrorFields() {
  return (
    <Disclosure id="ground-error" title="Elevation error" level="part" summary="">
      <SettingRow path="ground.biasShare" label="The same everywhere" />
      <SettingRow path="ground.correlatedShare" label="Alike within the range" />
      <SettingRow path="ground.rangeM" label="Range" />
      <SettingRow path="ground.correctionM" label="Correction of all elevations" />
    </Disclosure>
  );
}
