import type { Exported } from "../../shared/exports/exported.ts";
import { formatLength } from "../../shared/units.ts";
import { ClassSwatch, classWords } from "../drawing/class-bar.tsx";
import { EdgeSwatch } from "../drawing/line/edge-swatch.tsx";
import { edgedSections } from "../drawing/line/reach-shapes.ts";
import { lineMarks } from "../drawing/profile/line-marks.ts";
import { ProfileDrawing } from "../drawing/profile/profile-drawing.tsx";
import { tracedLine } from "../live/water-now.ts";
import { PlanDrawing } from "./plan-drawing.tsx";
import { Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

const MM_PX = 96 / 25.4;
/** Room for the plan, millimetres. */
const PLAN_MM = 90;
const PROFILE_PX = 180;

/** Where the line runs and how high it is: plan to scale, legend and profile. */
export function BuildPlanSheet(frame: SheetFrame) {
  return (
    <Sheet
      {...frame}
      name="Build plan and profile"
      pieces={({ widthMm }) => [<Plan of={frame.of} widthMm={widthMm} />]}
    />
  );
}

function Plan({ of: { plan, line, system }, widthMm }: { of: Exported; widthMm: number }) {
  const { limitM } = plan.practice;
  const waterNote =
    plan.water.by === "stage" ? `at stage ${formatLength(plan.water.stageM, system, 2)}` : "";
  return (
    <>
      <PlanDrawing plan={plan} line={line} system={system} room={{ widthMm, heightMm: PLAN_MM }} />
      <ul class="sheet-legend">
        {[0, 1, 2, 3, 4].map((index) => (
          <li key={index}>
            <ClassSwatch index={index} /> {classWords(index, limitM, system)}
          </li>
        ))}
        {edgedSections(line).map(({ section, name, pattern }) => (
          <li key={section}>
            <EdgeSwatch pattern={pattern} /> {name}
          </li>
        ))}
      </ul>
      <div class="sheet-whole">
        <h2>Profile</h2>
        <ProfileDrawing
          line={line}
          limitM={limitM}
          unitSystem={system}
          widthPx={Math.floor(widthMm * MM_PX)}
          heightPx={PROFILE_PX}
          waterNote={waterNote}
          marks={lineMarks(line, tracedLine.value, plan, system)}
        />
      </div>
    </>
  );
}
