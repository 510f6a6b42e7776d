import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import "./sections.css";
import { FOOT_M, INCH_M } from "../../shared/constants.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Plan } from "../../shared/plan.ts";
import { coursesFor } from "../../shared/quantities.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { formatLength, type UnitSystem } from "../../shared/units.ts";
import {
  countWords,
  groupWords,
  OVER_DO_NOT_BUILD,
  SECTIONS_FAILED,
  sectionScaleWords,
} from "../../shared/words/laying.ts";
import { leveeTypeText } from "../../shared/words/levee-types.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { SectionDrawing } from "../drawing/section/section-drawing.tsx";
import { spanOf } from "../drawing/section/section-outline.ts";
import { crossSectionsAt } from "../live/cross-sections.ts";
import { layingPieces } from "./laying-part.tsx";
import { COLUMN_MM, INCH_PX, pxOf } from "./paper.ts";
import { type SectionGroup, sectionGroups } from "./section-groups.ts";
import { Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

const MARGIN_M = 3;
const GAP_PX = 16;
const WIDTH_PX = Math.floor(pxOf(COLUMN_MM));
const EACH_PX = (WIDTH_PX - GAP_PX) / 2;
/** What a drawing needs beside the levee, across and up and down, pixels. */
const BESIDE_PX = 96;
const ABOUT_PX = 59;
const FEET_PER_INCH = [2, 3, 4, 5, 6, 8, 10, 20] as const;
const DENOMINATORS = [25, 40, 50, 75, 100, 200] as const;

/** One cross-section of each kind that the line is built by, the highest last, at one scale; and how bags are laid. */
export function CrossSectionsSheet(frame: SheetFrame) {
  const { of } = frame;
  const { plan, line, system } = of;
  const groups = sectionGroups(line, plan.practice.limitM);
  const sections = useSections(
    plan,
    line.id,
    groups.map(({ chainageM }) => chainageM),
  );
  const hasFailed = sections === "failed";
  const isDrawn = !hasFailed && sections?.length === groups.length && groups.length > 0;
  const drawn = isDrawn ? sections : null;
  const scale = drawn && scaleFor(of, drawn);
  const rows = scale ? figureRows(of, groups, drawn, scale.pxPerM) : [];
  const laying = layingPieces(of, system, scale ? sectionScaleWords(scale.words) : "");
  return (
    <Sheet
      {...frame}
      name="Cross-sections and laying"
      short="Sections"
      isWhole={drawn !== null || groups.length === 0}
      hasFailed={hasFailed}
      pieces={[...(hasFailed ? [NO_SECTIONS] : rows), ...laying]}
    />
  );
}

const NO_SECTIONS = (
  <p key="failed" class="section-failed">
    {SECTIONS_FAILED}
  </p>
);

function figureRows(
  of: Exported,
  groups: readonly SectionGroup[],
  sections: readonly CrossSection[],
  pxPerM: number,
): VNode[] {
  const pairs = groups.flatMap((_, i) => (i % 2 === 0 ? [[i, i + 1]] : []));
  return pairs.map((pair) => {
    const shown = pair.filter((i) => i < groups.length);
    const highestM = Math.max(...shown.map((i) => sections[i]!.greatestHeightM ?? 0));
    return (
      <div key={pair[0]} class="section-row">
        {shown.map((i) => (
          <Figure
            key={i}
            of={of}
            group={groups[i]!}
            cross={sections[i]!}
            pxPerM={pxPerM}
            heightPx={Math.ceil(highestM * pxPerM) + ABOUT_PX}
          />
        ))}
      </div>
    );
  });
}

interface FigureProps {
  readonly of: Exported;
  readonly group: SectionGroup;
  readonly cross: CrossSection;
  readonly pxPerM: number;
  readonly heightPx: number;
}

function Figure({ of: { plan, system }, group, cross, pxPerM, heightPx }: FigureProps) {
  const { where, range } = groupWords(group, system);
  const highM = cross.greatestHeightM ?? 0;
  const counts = {
    ...{ stake: cross.courses, bagsPerM: cross.bagsPerM },
    toe: coursesFor(highM, plan.section),
  };
  return (
    <figure class="section-figure" style={{ width: `${EACH_PX}px` }}>
      <figcaption>
        <strong data-over={group.isOver}>{formatLength(highM, system)}</strong>
        <div>
          {group.isOver && <p class="section-over">{OVER_DO_NOT_BUILD}</p>}
          {group.kind === "type" && <p class="section-where">{cross.sectionName}</p>}
          <p class="section-where">{where}</p>
          {range && <p>{range}</p>}
          <p>{countWords(counts, system)}</p>
        </div>
      </figcaption>
      <SectionDrawing
        halfWidths
        beside
        cross={cross}
        section={plan.section}
        limitM={plan.practice.limitM}
        unitSystem={system}
        widthPx={EACH_PX}
        heightPx={heightPx}
        needed={{ baseM: 0, heightM: (heightPx - ABOUT_PX + 2) / pxPerM }}
      />
      {group.kind === "type" && <TypeCautions typeId={cross.section} system={system} />}
    </figure>
  );
}

/** The largest usual scale at which the widest of them has room. */
function scaleFor({ plan, system }: Exported, sections: readonly CrossSection[]) {
  const widestM = Math.max(
    ...sections.map((cross) => {
      const { waterM, landM } = spanOf(cross);
      return waterM + landM + plan.section.sheet.toeExtensionM;
    }),
  );
  const most = (EACH_PX - BESIDE_PX) / Math.max(0.5, widestM);
  const scales =
    system === "us"
      ? FEET_PER_INCH.map((feet) => ({
          words: `1 in = ${feet} ft`,
          pxPerM: INCH_PX / (feet * FOOT_M),
        }))
      : DENOMINATORS.map((denominator) => ({
          words: `1 : ${denominator}`,
          pxPerM: INCH_PX / INCH_M / denominator,
        }));
  return scales.find(({ pxPerM }) => pxPerM <= most) ?? scales.at(-1)!;
}

function TypeCautions({
  typeId,
  system,
}: {
  readonly typeId: string;
  readonly system: UnitSystem;
}) {
  const { cautions, source } = leveeTypeText(typeId, unitsOf(system));
  if (cautions.length === 0) return null;
  return (
    <ul class="type-cautions">
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
      <li>
        <small>{source}</small>
      </li>
    </ul>
  );
}

/** The cross-sections; null until they are all there, `failed` where they cannot be cut. */
function useSections(
  plan: Plan,
  id: string,
  chainages: readonly number[],
): CrossSection[] | null | "failed" {
  const [sections, setSections] = useState<CrossSection[] | null | "failed">(null);
  const wanted = chainages.join(" ");
  useEffect(() => {
    let current = true;
    crossSectionsAt(plan, id, wanted.split(" ").map(Number), MARGIN_M)
      .then((answers) => {
        if (current) setSections(answers);
      })
      .catch(() => {
        if (current) setSections("failed");
      });
    return () => {
      current = false;
    };
  }, [plan, id, wanted]);
  return sections;
}
