import type { Alignment, ReachSection } from "../../../shared/plan.ts";
import { isStandard } from "../../../shared/reaches.ts";
import { sectionById } from "../../../shared/sections.ts";
import type { Reach } from "../../../shared/sizing-types.ts";
import { formatStation } from "../../../shared/units.ts";
import { markMiddleWords } from "../../../shared/words/crew-parts.ts";
import { leveeTypeText } from "../../../shared/words/levee-types.ts";
import { stretchTakes } from "../../../shared/words/materials.ts";
import { unitsOf } from "../../../shared/words/units.ts";
import { buildReach, moveBreak, removeBreak } from "../../document/edits/reaches.ts";
import { tell } from "../../document/notices.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { Icon } from "../../ui/icons.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { STATION } from "../../ui/quantity.ts";
import { ReachFigures } from "./reach-figures.tsx";
import { SectionSelect } from "./section-select.tsx";

interface ReachRowProps {
  readonly alternative: Alignment;
  /** Counted from 0. */
  readonly index: number;
  readonly fromM: number;
  readonly toM: number;
  readonly lengthM: number;
  readonly built: ReachSection;
  /** What it came to; null until it is counted. */
  readonly sized: Reach | null;
}

/** One reach: where it runs, what it is built as, and what that takes. */
export function ReachRow(props: ReachRowProps) {
  const { alternative, index, fromM, toM, built, sized } = props;
  const system = unitSystem.value;
  const called = `reach ${index + 1}`;
  const declared = sectionById(built.section);
  const show = () => {
    const marked = markedM.value;
    if (marked === null || marked < fromM || marked > toM) markedM.value = (fromM + toM) / 2;
  };
  const build = (section: string) => {
    const note = `Build ${called} of ${alternative.name} otherwise`;
    const outcome = buildReach(alternative, index, { section, figures: {} }, { note });
    if (!outcome.ok) tell("error", outcome.failure);
    show();
  };
  return (
    <li class="reach" data-reach={index + 1}>
      <div class="reach-where">
        <button
          type="button"
          class="text-button"
          aria-label={markMiddleWords(fromM, called, system)}
          onClick={() => {
            markedM.value = (fromM + toM) / 2;
          }}
        >
          {formatStation(fromM, system)} to
        </button>
        <ReachEnd {...props} />
      </div>
      <SectionSelect label={`Levee type of ${called}`} value={built.section} onSection={build} />
      {declared.ok && !isStandard(built) && (
        <p class="hint">{leveeTypeText(declared.value.id, unitsOf(system)).about}</p>
      )}
      {sized && <p class="reach-takes">{takenWords(sized)}</p>}
      {declared.ok && (
        <ReachFigures
          alternative={alternative}
          index={index}
          built={built}
          section={declared.value}
          onChange={show}
        />
      )}
    </li>
  );
}

/** The station a reach ends at, to retype; the last reach ends where the line does. */
function ReachEnd({ alternative, index, toM, lengthM }: ReachRowProps) {
  const system = unitSystem.value;
  if (index >= alternative.reachBreaksM.length || toM >= lengthM) {
    return <span>{formatStation(toM, system)}</span>;
  }
  return (
    <>
      <NumberField
        system={unitSystem.value}
        label={`End of reach ${index + 1}`}
        labelHidden
        value={toM}
        quantity={STATION}
        onValue={(value, gesture) => moveBreak(alternative, index, value ?? toM, lengthM, gesture)}
      />
      <button
        type="button"
        class="icon-button"
        aria-label={`Remove the break at ${formatStation(toM, system)}`}
        data-tip="Join with the next reach"
        onClick={() => removeBreak(alternative, toM)}
      >
        <Icon name="close" />
      </button>
    </>
  );
}

function takenWords({ totals }: Reach): string {
  const words = stretchTakes(totals, unitSystem.value);
  if (words !== "") return words;
  return totals.lengthNoDataM > 0 ? "Not counted: no elevation data" : "Nothing to build";
}
