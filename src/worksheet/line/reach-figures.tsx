import type { Alignment, ReachSection } from "../../../shared/plan.ts";
import type { EmergencySection, SectionFigure } from "../../../shared/sections/types.ts";
import { figuresOf } from "../../../shared/sections.ts";
import { formatLength } from "../../../shared/units.ts";
import { leveeTypeText } from "../../../shared/words/levee-types.ts";
import { figureNote } from "../../../shared/words/setting-notes.ts";
import { unitsOf } from "../../../shared/words/units.ts";
import { buildReach, withFigure } from "../../document/edits/reaches.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { Icon } from "../../ui/icons.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { quantityOf } from "../../ui/quantity.ts";
import { Source } from "../../ui/source.tsx";

interface ReachFiguresProps {
  readonly alternative: Alignment;
  readonly index: number;
  readonly built: ReachSection;
  readonly section: EmergencySection;
  readonly onChange: () => void;
}

/** What a reach's section is built by: its own figures, how high it may go, and what to heed. */
export function ReachFigures(props: ReachFiguresProps) {
  const { index, section } = props;
  const system = unitSystem.value;
  const { figures } = section;
  const { limit, cautions, source } = leveeTypeText(section.id, unitsOf(system));
  const limitM = section.limitM ?? plan.value.practice.limitM;
  return (
    <details class="reach-own">
      <summary>
        Figures, limit{cautions.length > 0 ? " and cautions" : ""} of reach {index + 1}
      </summary>
      {figures.map((figure) => (
        <FigureRow key={`${section.id} ${figure.key}`} figure={figure} {...props} />
      ))}
      <p class="reach-limit">
        <span>Height limit</span>
        <span>{formatLength(limitM, system)}</span>
        <Source
          about="the height limit"
          lines={[
            section.limitM === null
              ? "The plan's own height limit, set under Levee type and bags."
              : null,
            limit.note,
            `Source: ${limit.source}.`,
          ]}
        />
      </p>
      {cautions.length > 0 && (
        <ul class="reach-cautions" aria-label="Cautions">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <small>{source}</small>
    </details>
  );
}

function FigureRow(props: ReachFiguresProps & { readonly figure: SectionFigure }) {
  const { alternative, index, built, section, figure, onChange } = props;
  const { key, label, kind, lowSI, highSI, source } = figure;
  const defaultSI = figure.defaultFor(plan.value);
  const quantity = quantityOf({ ...figure, defaultSI });
  const value = figuresOf(section, built, plan.value)[key]!;
  const standard = quantity.format(defaultSI, unitSystem.value);
  const set = (next: number | null, gesture?: string) => {
    const isDefault = next !== null && Math.abs(next - defaultSI) <= 1e-9 * Math.max(1, defaultSI);
    onChange();
    return buildReach(alternative, index, withFigure(built, key, isDefault ? null : next), {
      note: `Change ${label.toLowerCase()} of reach ${index + 1}`,
      gesture,
    });
  };
  return (
    <div class="setting" data-figure={key}>
      <NumberField
        system={unitSystem.value}
        label={label}
        value={value}
        quantity={quantity}
        range={{ least: lowSI, most: highSI, whole: kind === "count" }}
        onValue={set}
      />
      <Source
        about={label}
        lines={[
          `Default ${standard}.`,
          figureNote(section.id, key, unitsOf(unitSystem.value)),
          `Source: ${source}.`,
        ]}
      />
      {built.figures[key] !== undefined && (
        <button
          type="button"
          class="icon-button setting-reset"
          aria-label={`Set ${label} of reach ${index + 1} back to ${standard}`}
          data-tip={`Back to ${standard}`}
          onClick={() => set(null)}
        >
          <Icon name="reset" />
        </button>
      )}
    </div>
  );
}
