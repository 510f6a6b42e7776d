import { useEffect, useState } from "preact/hooks";
import type { Plan, Section } from "../../shared/plan.ts";
import type { CrossSection, SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, formatStation, type UnitSystem } from "../../shared/units.ts";
import { engine } from "../engine.ts";
import { toeWords } from "../profile/profile-reading.ts";
import { SectionDrawing } from "../profile/section-drawing.tsx";

interface SectionFiguresProps {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly system: UnitSystem;
  readonly widthPx: number;
  /** A further station to draw; null for none. */
  readonly markedM: number | null;
}

const MARGIN_M = 3;
const HEIGHT_PX = 210;
const GAP_PX = 16;
/** Closer than this the marked station is the highest one, metres. */
const SAME_M = 2;

/** The levee cut across where it is highest, and at the marked station. */
export function SectionFigures({ plan, line, system, widthPx, markedM }: SectionFiguresProps) {
  const highestM = line.totals.greatestHeightAtM;
  const other = markedM !== null && Math.abs(markedM - highestM) > SAME_M ? markedM : null;
  const chainages = other === null ? [highestM] : [highestM, other];
  const sections = useSections(plan, line, chainages);
  const eachPx = (widthPx - GAP_PX) / 2;
  return (
    <section class="sheet-part" aria-label="Section">
      <h2>Section</h2>
      <div class="sheet-sections">
        {sections.map((cross) => (
          <figure key={cross.chainageM}>
            <figcaption>
              {formatStation(cross.chainageM, system)}
              {cross.chainageM === highestM ? ", the highest" : ", marked"}:{" "}
              {cross.greatestHeightM === null
                ? "no ground data"
                : heightAndCourses(cross, plan.section, system)}
            </figcaption>
            <SectionDrawing
              cross={cross}
              section={plan.section}
              limitM={plan.practice.limitM}
              unitSystem={system}
              widthPx={eachPx}
              heightPx={HEIGHT_PX}
            />
          </figure>
        ))}
      </div>
    </section>
  );
}

function heightAndCourses(cross: CrossSection, section: Section, system: UnitSystem): string {
  const { heightM, greatestHeightM } = cross;
  if (heightM === null || greatestHeightM === null) return "";
  const high = `${formatLength(greatestHeightM, system)} high`;
  return `${high}, ${toeWords(heightM, greatestHeightM, section)}`;
}

function useSections(plan: Plan, line: SizedLine, chainages: readonly number[]): CrossSection[] {
  const [sections, setSections] = useState<CrossSection[]>([]);
  const wanted = chainages.join(" ");
  useEffect(() => {
    let current = true;
    const asked = wanted.split(" ").map((chainageM) =>
      engine.crossSection({
        plan,
        id: line.id,
        chainageM: Number(chainageM),
        marginM: MARGIN_M,
      }),
    );
    Promise.all(asked)
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
