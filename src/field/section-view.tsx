import { isStandard, reachAt } from "../../shared/reaches.ts";
import { formatStation } from "../../shared/units.ts";
import { fieldFacts, sectionHeadWords } from "../../shared/words/field.ts";
import { layingWords } from "../../shared/words/field-laying.ts";
import { heightUpWords } from "../../shared/words/height-up.ts";
import { plan } from "../document/store.ts";
import { SectionDrawing } from "../drawing/section/section-drawing.tsx";
import { unitSystem } from "../live/screen.ts";
import { useSize } from "../ui/use-size.ts";
import type { AtStake } from "./at.ts";
import { MustFixBox } from "./must-fix-box.tsx";
import { Read } from "./read.tsx";
import { StakeKeys } from "./stake-keys.tsx";
import { useCrossSection } from "./use-cross-section.ts";

/** Ground drawn beyond the toes, metres. */
const MARGIN_M = 3;

/** The levee cut across at the stake, to scale, bag by bag, and how it is laid. */
export function SectionView({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const cross = useCrossSection(at, MARGIN_M);
  const [ref, size] = useSize<HTMLDivElement>();
  const { section, practice } = plan.value;
  const { greatestHeightM, chainageM } = at.station;
  const station = formatStation(chainageM, system);
  const reach = reachAt(at.line, chainageM);
  const facts = fieldFacts({ ...at, plan: plan.value, system });
  return (
    <div class="crew-section">
      <Read label="Cross-section">
        <header class="crew-head">
          <h2 class="crew-station">{station}</h2>
          <p>
            {reach.sectionName}
            {greatestHeightM !== null && greatestHeightM > 0 && (
              <strong>{sectionHeadWords(at.station, system)}</strong>
            )}
          </p>
        </header>
        <div
          class="crew-cut"
          ref={ref}
          role="img"
          aria-label={`Cross-section at ${station}, ${facts.map(({ name, value }) => `${name} ${value}`).join(", ")}`}
        >
          {cross && size && (
            <SectionDrawing
              cross={cross}
              section={section}
              limitM={practice.limitM}
              height={heightUpWords(cross.greatestHeightM ?? 0, system)}
              unitSystem={system}
              {...size}
            />
          )}
        </div>
        <MustFixBox />
        {isStandard(reach) && (
          <ul class="crew-list">
            {layingWords(section, system).map(({ text, source }) => (
              <li key={text}>
                {text} <small>{source}</small>
              </li>
            ))}
          </ul>
        )}
      </Read>
      <StakeKeys at={at} />
    </div>
  );
}
