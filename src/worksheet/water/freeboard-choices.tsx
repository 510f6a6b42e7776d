import { FOOT_M } from "../../../shared/constants.ts";
import { SETTINGS } from "../../../shared/settings.ts";
import { formatLength } from "../../../shared/units.ts";
import { changeSetting } from "../../document/edits/settings.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { Source } from "../../ui/source.tsx";

const CHOICES = [
  { valueM: 1 * FOOT_M, source: "NDSU-11, IS-280" },
  { valueM: 2 * FOOT_M, source: "MB, EMI-L4" },
] as const;

/** The published freeboards, each at one press. */
export function FreeboardChoices() {
  const { freeboardM } = plan.value.water;
  const system = unitSystem.value;
  return (
    <fieldset class="freeboard-choices">
      <legend class="unseen">Published freeboards</legend>
      <span>Freeboard</span>
      {CHOICES.map(({ valueM, source }) => (
        <button
          key={source}
          type="button"
          class="chip"
          aria-pressed={Math.abs(freeboardM - valueM) < 1e-6}
          onClick={() => changeSetting("water.freeboardM", "Freeboard", valueM)}
        >
          {formatLength(valueM, system)} <span>{source}</span>
        </button>
      ))}
      <Source about="Freeboard" lines={[`Source: ${SETTINGS["water.freeboardM"].source}.`]} />
    </fieldset>
  );
}
