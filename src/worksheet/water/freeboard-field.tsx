import { FOOT_M } from "../../../shared/constants.ts";
import { formatLength } from "../../../shared/units.ts";
import { changeSetting } from "../../document/edits/settings.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { SettingRow } from "../setting-row.tsx";

const CHOICES = [
  { valueM: 1 * FOOT_M, source: "NDSU-11, IS-280" },
  { valueM: 2 * FOOT_M, source: "MB, EMI-L4" },
] as const;

/** Freeboard, with the two published figures at one press. */
export function FreeboardField() {
  const { freeboardM } = plan.value.water;
  return (
    <>
      <SettingRow path="water.freeboardM" label="Freeboard" />
      <fieldset class="chips" aria-label="Published freeboards">
        {CHOICES.map(({ valueM, source }) => (
          <button
            key={source}
            type="button"
            class="chip"
            aria-pressed={Math.abs(freeboardM - valueM) < 1e-6}
            onClick={() => changeSetting("water.freeboardM", "Freeboard", valueM)}
          >
            {formatLength(valueM, unitSystem.value)} <span>{source}</span>
          </button>
        ))}
      </fieldset>
    </>
  );
}
