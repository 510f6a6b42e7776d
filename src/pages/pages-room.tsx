import { failureText } from "../../shared/words/failure.ts";
import "./pages.css";
import { useEffect, useRef } from "preact/hooks";
import type { Failure } from "../../shared/failure.ts";
import { letterOf } from "../../shared/line-letter.ts";
import type { Alignment } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength } from "../../shared/units.ts";
import { overtopsButForGap } from "../../shared/words/ground-gap.ts";
import { chosenAlternative, chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { ClassSwatch, classWords } from "../drawing/class-bar.tsx";
import { CompareTable } from "../drawing/compare-table.tsx";
import { EdgeSwatch } from "../drawing/line/edge-swatch.tsx";
import { edgedSections } from "../drawing/line/reach-shapes.ts";
import { lineMarks } from "../drawing/profile/line-marks.ts";
import { ProfileDrawing } from "../drawing/profile/profile-drawing.tsx";
import { ReachTable } from "../drawing/reach-table.tsx";
import { ground } from "../live/ground.ts";
import { pagesReady } from "../live/pages-ready.ts";
import { chosenLine, sized } from "../live/results.ts";
import { markedM, pagesOpen, unitSystem } from "../live/screen.ts";
import { uncounted } from "../live/uncounted.ts";
import { chosenChecks, mustFixOn, tracedLine, tracedNow, waterNow } from "../live/water-now.ts";
import { BuildOrderSheet } from "./build-order-sheet.tsx";
import { ChecksSheet } from "./checks-sheet.tsx";
import { MapFigure, type MapForPages } from "./map-figure.tsx";
import { OrdersSheet } from "./orders-sheet.tsx";
import { PagesBar } from "./pages-bar.tsx";
import { pageRule, paper, printable, printedNow } from "./paper.ts";
import { PlanDrawing } from "./plan-drawing.tsx";
import { SectionFigures } from "./section-figures.tsx";
import { SheetHead } from "./sheet-head.tsx";
import { StationSheet } from "./station-sheet.tsx";
import { WatchSheet } from "./watch-sheet.tsx";

const MM_PX = 96 / 25.4;
/** Room for the plan on the first sheet, under the head, millimetres. */
const PLAN_MM = 168;
const PROFILE_PX = 210;
/** Room that the profile and the sections take on the sheet they share with the map, millimetres. */
const BESIDE_MAP_MM = 168;

/** The whole plan laid out for paper: as it is seen here it is printed. */
export function PagesRoom({ map }: { readonly map: MapForPages }) {
  const room = useRef<HTMLDivElement>(null);
  useEffect(() => {
    room.current?.focus();
    const onKey = (event: KeyboardEvent) => {
      if (event.key === "Escape") pagesOpen.value = false;
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, []);
  const line = chosenLine.value;
  const alternative = chosenAlternative.value;
  const ready = pagesReady.value;
  return (
    <div class="sheets" ref={room} tabIndex={-1} role="dialog" aria-label="Sheets">
      <style>{pageRule(paper.value)}</style>
      {line && alternative && ready !== "ready" ? (
        <NoPages words={waitingWords(ready)} />
      ) : line && alternative ? (
        <>
          <PagesBar
            title={plan.value.title}
            alternative={alternative}
            line={line}
            system={unitSystem.value}
          />
          <Sheets line={line} alternative={alternative} map={map} />
        </>
      ) : (
        <NoPages words={emptyWords()} />
      )}
    </div>
  );
}

function emptyWords(): string {
  return uncounted.value
    ? `Nothing is known of the plan, so there is nothing to print. ${failureText(uncounted.value, unitSystem.value)}`
    : "There is no line to put on paper yet. Draw one, and its plan, profile, stations and orders stand here.";
}

/** Why nothing can be printed or saved yet: what there is, is of a former plan. */
function waitingWords(why: "counting" | Failure): string {
  return why === "counting"
    ? "Counting the plan as it stands. The pages come when bags, checks and water are all of this plan."
    : `These pages cannot be made. ${failureText(why, unitSystem.value)}`;
}

function NoPages({ words }: { readonly words: string }) {
  return (
    <div class="sheets-none">
      <p role="status">{words}</p>
      <button
        type="button"
        class="tool-button"
        onClick={() => {
          pagesOpen.value = false;
        }}
      >
        Back to the plan
      </button>
    </div>
  );
}

interface SheetsProps {
  readonly line: SizedLine;
  readonly alternative: Alignment;
  readonly map: MapForPages;
}

function Sheets({ line, alternative, map }: SheetsProps) {
  const now = plan.value;
  const system = unitSystem.value;
  const { widthMm, heightMm } = printable(paper.value);
  const widthPx = Math.floor(widthMm * MM_PX);
  const { limitM } = now.practice;
  const letter = letterOf(now.alignments.findIndex((each) => each.id === alternative.id));
  const results = now.alignments.flatMap((each) => sized.value.get(each.id) ?? []);
  const waterNote =
    now.water.by === "stage" ? `at stage ${formatLength(now.water.stageM, system, 2)}` : "";
  return (
    <article class="sheet" style={{ width: `${widthMm}mm` }}>
      <SheetHead
        plan={now}
        line={line}
        letter={letter}
        ground={ground.value}
        system={system}
        printed={printedNow()}
      />
      <section class="sheet-part" aria-label="Plan">
        <PlanDrawing plan={now} line={line} system={system} room={{ widthMm, heightMm: PLAN_MM }} />
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
          {now.alignments.length > 1 && <li>dotted: other alternatives</li>}
        </ul>
      </section>
      <MapFigure map={map} heightMm={heightMm - BESIDE_MAP_MM} />
      <section class="sheet-part" aria-label="Along the line">
        <h2>Along the line</h2>
        <ProfileDrawing
          line={line}
          limitM={limitM}
          unitSystem={system}
          widthPx={widthPx}
          heightPx={PROFILE_PX}
          waterNote={waterNote}
          marks={lineMarks(line, tracedLine.value, now, system)}
        />
      </section>
      <SectionFigures
        plan={now}
        line={line}
        system={system}
        widthPx={widthPx}
        markedM={markedM.value}
      />
      <OrdersSheet plan={now} line={line} system={system} />
      {line.reaches.length > 1 && (
        <section class="sheet-part sheet-whole" aria-label="Reaches">
          <h2>Reaches</h2>
          <ReachTable line={line} system={system} />
        </section>
      )}
      {results.length > 1 && (
        <section class="sheet-part sheet-whole" aria-label="Alternatives">
          <h2>Alternatives</h2>
          <CompareTable
            plan={now}
            mustFixOn={mustFixOn}
            lines={results}
            chosen={chosenId.value}
            system={system}
            traced={tracedNow.value}
          />
        </section>
      )}
      <ChecksSheet
        checks={chosenChecks.value}
        overtops={
          tracedLine.value
            ? overtopsButForGap(tracedLine.value, line, now, system, mustFixOn(line))
            : null
        }
        system={system}
      />
      <BuildOrderSheet plan={now} line={line} results={results} system={system} widthPx={widthPx} />
      <WatchSheet
        plan={now}
        line={line}
        traced={tracedLine.value}
        structures={waterNow.value?.structures ?? []}
        system={system}
      />
      <StationSheet plan={now} line={line} system={system} />
    </article>
  );
}
