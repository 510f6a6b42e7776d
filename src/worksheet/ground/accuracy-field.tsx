import { longestCellM, typicalAccuracy } from "../../../shared/ground-accuracy.ts";
import { formatLength } from "../../../shared/units.ts";
import { backToTypicalWords, typicalAccuracyNotes } from "../../../shared/words/setting-notes.ts";
import { changeSetting } from "../../document/edits/settings.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { Icon } from "../../ui/icons.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { settingQuantity } from "../../ui/quantity.ts";
import { rangeOf } from "../../ui/range.ts";
import { Source } from "../../ui/source.tsx";

const PATH = "ground.rmseM";
const LABEL = "Accuracy of the elevations (RMSE)";

/** Accuracy of the ground: what the survey's report says; left empty, what is typical of its cell size. */
export function AccuracyField() {
  const { rmseM } = plan.value.ground;
  const system = unitSystem.value;
  const typical = typicalAccuracy(longestCellM(ground.value));
  const standard = formatLength(typical.rmseM, system, 2);
  return (
    <div class="setting" data-setting={PATH}>
      <NumberField
        system={unitSystem.value}
        label={LABEL}
        value={rmseM}
        quantity={settingQuantity(PATH)}
        range={rangeOf(PATH)}
        blank={standard}
        onValue={(value, gesture) => changeSetting(PATH, LABEL, value, gesture)}
      />
      <Source about={LABEL} lines={typicalAccuracyNotes(typical, system)} />
      {rmseM !== null && (
        <button
          type="button"
          class="icon-button setting-reset"
          aria-label={backToTypicalWords(LABEL, typical.rmseM, system)}
          data-tip={`Back to ${standard}`}
          onClick={() => changeSetting(PATH, LABEL, null)}
        >
          <Icon name="reset" />
        </button>
      )}
    </div>
  );
}
