import { useEffect, useState } from "preact/hooks";
import type { Plan, Section } from "../../shared/plan.ts";
import { hasOtherSections } from "../../shared/reaches.ts";
import type { CrossSection, SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, formatStation, type UnitSystem } from "../../shared/units.ts";
import { leveeTypeText } from "../../shared/words/levee-types.ts";
import { SETTLING_NOTE, topWords } from "../../shared/words/settling.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { toeWords } from "../drawing/profile/profile-reading.ts";
import { SectionDrawing } from "../drawing/section/section-drawing.tsx";
import { crossSectionsAt } from "../live/cross-sections.ts";
import { markedM } from "../live/screen.ts";
import { drawnStations } from "./drawn-stations.ts";
import { COLUMN_MM } from "./paper.ts";
import { Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

const MARGIN_M = 3;
const HEIGHT_PX = 210;
const GAP_PX = 16;
const WIDTH_PX = Math.floor((COLUMN_MM * 96) / 25.4);

/** The levee cut across where each of its types is highest, with the cautions for it, and at the marked station. */
export function CrossSectionsSheet(frame: SheetFrame) {
  const { plan, line, system } = frame.of;
  const drawn = drawnStations(line, markedM.value);
  const chainages = drawn.map(({ chainageM }) => chainageM);
  const sections = useSections(plan, line, chainages);
  const eachPx = (WIDTH_PX - GAP_PX) / 2;
  const namesTypes = hasOtherSections(line);
  const figures = sections.map((cross, index) => (
    <figure key={cross.chainageM} style={{ width: `${eachPx}px` }}>
      <figcaption>
        {namesTypes && <strong>{cross.sectionName}. </strong>}
        {formatStation(cross.chainageM, system)}, {drawn[index]?.why}:{" "}
        {cross.greatestHeightM === null
          ? "no elevation data"
          : heightAndCourses(cross, plan.section, system)}
      </figcaption>
      <SectionDrawing
        halfWidths
        cross={cross}
        section={plan.section}
        limitM={plan.practice.limitM}
        unitSystem={system}
        widthPx={eachPx}
        heightPx={HEIGHT_PX}
      />
      {drawn[index]?.why === "the highest" && (
        <TypeCautions typeId={cross.section} system={system} />
      )}
    </figure>
  ));
  return (
    <Sheet
      {...frame}
      name="Cross-sections"
      pieces={[
        <p class="sheet-lead">{SETTLING_NOTE}</p>,
        <div class="sheet-sections">{figures}</div>,
      ]}
    />
  );
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

function heightAndCourses(cross: CrossSection, section: Section, system: UnitSystem): string {
  const { heightM, greatestHeightM } = cross;
  if (heightM === null || greatestHeightM === null) return "";
  const high = `${formatLength(greatestHeightM, system)} high, ${topWords(cross, system)}`;
  return cross.courses ? `${high}, ${toeWords(heightM, greatestHeightM, section)}` : high;
}

function useSections(plan: Plan, line: SizedLine, chainages: readonly number[]): CrossSection[] {
  const [sections, setSections] = useState<CrossSection[]>([]);
  const wanted = chainages.join(" ");
  useEffect(() => {
    let current = true;
    crossSectionsAt(plan, line.id, wanted.split(" ").map(Number), MARGIN_M)
      .then((answers) => {
        if (current) setSections(answers);
      })
      .catch(() => {
        if (current) setSections([]);
      });
    return () => {
      current = false;
    };
  }, [plan, line.id, wanted]);
  return sections;
}
