import { isStandard, reachAt } from "../../shared/reaches.ts";
import { formatStation } from "../../shared/units.ts";
import { cautionsAt } from "../../shared/words/cautions.ts";
import { fieldFacts, noHeightWords, sectionHeadWords } from "../../shared/words/field.ts";
import { layingWords } from "../../shared/words/field-laying.ts";
import { heightUpWords } from "../../shared/words/height-up.ts";
import { plan } from "../document/store.ts";
import { SectionDrawing } from "../drawing/section/section-drawing.tsx";
import { unitSystem } from "../live/screen.ts";
import { useSize } from "../ui/use-size.ts";
import type { AtStake } from "./at.ts";
import { MustFixBox } from "./must-fix-box.tsx";
import { Read } from "./read.tsx";
import { SourcedList } from "./sourced-list.tsx";
import { StakeKeys } from "./stake-keys.tsx";
import { useCrossSection } from "./use-cross-section.ts";

/** Ground drawn beyond the toes, metres. */
const MARGIN_M = 3;

/** The levee cut across at the stake, to scale, bag by bag, and how it is laid. */
export function SectionView({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const { chainageM } = at.station;
  const none = noHeightWords(at.line, at.station);
  const reach = reachAt(at.line, chainageM);
  const cautions = cautionsAt("build");
  const laying = layingWords(plan.value.section, system);
  return (
    <div class="crew-section">
      <Read label="Cross-section">
        <header class="crew-head">
          <h2 class="crew-station">{formatStation(chainageM, system)}</h2>
          <p>
            {reach.sectionName}
            {none === null && <strong>{sectionHeadWords(at.station, system)}</strong>}
          </p>
        </header>
        {none !== null && <p class="crew-no-height">{none}</p>}
        {!at.line.levelDoubt?.countsUnknown && <Cut at={at} />}
        <MustFixBox />
        <SourcedList items={isStandard(reach) ? [...cautions, ...laying] : cautions} />
      </Read>
      <StakeKeys at={at} />
    </div>
  );
}

function Cut({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const cross = useCrossSection(at, MARGIN_M);
  const [ref, size] = useSize<HTMLDivElement>();
  const { section, practice } = plan.value;
  const station = formatStation(at.station.chainageM, system);
  const facts = fieldFacts({ ...at, plan: plan.value, system });
  return (
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
  );
}
