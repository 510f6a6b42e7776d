import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Exported } from "../../shared/exports/exported.ts";
import { benchmarkWords, planKey } from "../../shared/words/build-sheet.ts";
import { notPlacedWords } from "../../shared/words/work-places.ts";
import { ClassSwatch, classWords } from "../drawing/class-bar.tsx";
import { EdgeSwatch } from "../drawing/line/edge-swatch.tsx";
import { edgedSections } from "../drawing/line/reach-shapes.ts";
import { COLUMN_MM, pxOf } from "./paper.ts";
import { benchmarkOn } from "./plan-benchmark.tsx";
import { PlanDrawing } from "./plan-drawing.tsx";
import { planFrames } from "./plan-frame.ts";
import { ProfileKey, ProfileStrip } from "./profile-strip.tsx";
import { type PartOfLine, type Room, Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

const WIDTH_PX = Math.floor(pxOf(COLUMN_MM));
/** What profile, keys and notes take of a page until they are measured, millimetres. */
const FIRST_REST_MM = 84;
const LEAST_PLAN_MM = 60;
/** Left free under it, millimetres. */
const UNDER_MM = 3.2;

/** Where the line runs and how high it is: plan to scale, and the profile under it station for station. */
export function BuildPlanSheet(frame: SheetFrame) {
  const rest = useRef<HTMLDivElement>(null);
  const [restMm, setRestMm] = useState(FIRST_REST_MM);
  useLayoutEffect(() => {
    const box = rest.current?.getBoundingClientRect();
    if (!box) return;
    const nowMm = (box.height / box.width) * COLUMN_MM;
    setRestMm((was) => (Math.abs(was - nowMm) < 0.3 ? was : nowMm));
  });
  const pages = ({ widthMm, heightMm }: Room) => {
    const planMm = Math.max(LEAST_PLAN_MM, heightMm - restMm - UNDER_MM);
    const { plan, line, system } = frame.of;
    const benchmark = benchmarkWords(plan, system);
    const frames = planFrames(plan, line, { widthMm, heightMm: planMm }, system);
    return frames.map(
      (each, index): PartOfLine => ({
        part: each,
        element: (
          <div>
            <PlanDrawing
              of={frame.of}
              frame={each}
              before={index > 0 ? index : null}
              after={index + 1 < frames.length ? index + 2 : null}
            />
            <div ref={index === 0 ? rest : null}>
              <PlanKey of={frame.of} />
              <ProfileKey of={frame.of} />
              <ProfileStrip of={frame.of} fromM={each.fromM} toM={each.toM} widthPx={WIDTH_PX} />
              <p class="plan-note">
                {[
                  benchmark,
                  notPlacedWords(plan.workPlaces ?? [], benchmarkOn(plan, each) !== null),
                ]
                  .filter(Boolean)
                  .join(" ")}
              </p>
            </div>
          </div>
        ),
      }),
    );
  };
  return <Sheet {...frame} name="Build plan and profile" short="Build" pieces={pages} />;
}

function PlanKey({ of: { plan, line, system } }: { readonly of: Exported }) {
  const key = planKey(plan, system);
  return (
    <ul class="plan-key">
      <li>
        <strong>{system === "us" ? "2.4" : "0.73"}</strong> {key.height}
      </li>
      <li>
        <strong>8 c</strong> {key.courses}
      </li>
      {line.totals.lengthByClassM
        .flatMap((lengthM, index) => (lengthM > 0 ? [index] : []))
        .map((index) => (
          <li key={index}>
            <ClassSwatch index={index} /> {classWords(index, plan.practice.limitM, system)}
          </li>
        ))}
      {edgedSections(line).map(({ section, name, pattern }) => (
        <li key={section}>
          <EdgeSwatch pattern={pattern} /> {name}
        </li>
      ))}
      <li>
        <strong>H1</strong> tie corner
      </li>
    </ul>
  );
}
