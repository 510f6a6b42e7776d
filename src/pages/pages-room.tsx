import { failureText } from "../../shared/words/failure.ts";
import "./pages.css";
import { useEffect, useRef } from "preact/hooks";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Failure } from "../../shared/failure.ts";
import type { Alignment } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { overtopsButForGap } from "../../shared/words/ground-gap.ts";
import { verticalDatumWords } from "../../shared/words/vertical-datum.ts";
import { chosenAlternative, chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { CompareTable } from "../drawing/compare-table.tsx";
import { ReachTable } from "../drawing/reach-table.tsx";
import { ground } from "../live/ground.ts";
import { pagesReady } from "../live/pages-ready.ts";
import { chosenLine, sized } from "../live/results.ts";
import { markedM, pagesOpen, unitSystem } from "../live/screen.ts";
import { uncounted } from "../live/uncounted.ts";
import { chosenChecks, mustFixOn, tracedLine, tracedNow, waterNow } from "../live/water-now.ts";
import { BuildPlanPart } from "./build-plan-part.tsx";
import { BuildSequencePart } from "./build-sequence-part.tsx";
import { ChecksPart } from "./checks-part.tsx";
import { CrossSectionsPart } from "./cross-sections-part.tsx";
import { GivenPart } from "./given-part.tsx";
import { MapFigure, type MapForPages } from "./map-figure.tsx";
import { OrderPart } from "./order-part.tsx";
import { PagesBar } from "./pages-bar.tsx";
import { pageRule, paper, printable } from "./paper.ts";
import { Sheet } from "./sheet.tsx";
import { StakesPart } from "./stakes-part.tsx";
import { WatchPart } from "./watch-part.tsx";

const MM_PX = 96 / 25.4;
/** Room that title block and cautions take of a page with the map, millimetres. */
const BESIDE_MAP_MM = 80;

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
    <div class="sheets" ref={room} tabIndex={-1} role="dialog" aria-label="Print">
      <style>{pageRule(paper.value)}</style>
      {line && alternative && ready !== "ready" ? (
        <NoPages words={waitingWords(ready)} />
      ) : line && alternative ? (
        <>
          <PagesBar of={exported(line, alternative)} />
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
    ? `Nothing was calculated, so there is nothing to print. ${failureText(uncounted.value, unitSystem.value)}`
    : "There is no line to print yet. Draw one: its build plan, stakes, cross-sections and order come here.";
}

/** Why nothing can be printed or saved yet: what there is was calculated for an earlier plan. */
function waitingWords(why: "counting" | Failure): string {
  return why === "counting"
    ? "Counting the plan. The pages come when bags, checks and water are all of this plan."
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
  const results = now.alignments.flatMap((each) => sized.value.get(each.id) ?? []);
  const of = exported(line, alternative);
  const { holding, time } = line;
  const crew = [
    { name: "Build plan", page: <BuildPlanPart of={of} widthMm={widthMm} /> },
    { name: "Stakes", page: <StakesPart of={of} /> },
    {
      name: "Cross-sections",
      page: <CrossSectionsPart of={of} widthPx={widthPx} markedM={markedM.value} />,
    },
    ...(holding
      ? [
          {
            name: "Watch and pumps",
            page: (
              <WatchPart
                of={of}
                holding={holding}
                traced={tracedLine.value}
                structures={waterNow.value?.structures ?? []}
              />
            ),
          },
        ]
      : []),
    ...(time && time.stretches.length > 0
      ? [
          {
            name: "Build sequence",
            page: <BuildSequencePart of={of} time={time} results={results} widthPx={widthPx} />,
          },
        ]
      : []),
  ];
  return (
    <article class="sheet" style={{ width: `${widthMm}mm` }}>
      {crew.map(({ name, page }, index) => (
        <Sheet
          key={name}
          of={of}
          name={name}
          label={`Sheet ${index + 1} of ${crew.length}`}
          forCrew
        >
          {page}
        </Sheet>
      ))}
      <Sheet of={of} name="Order and checks" label="Office pages" forCrew={false}>
        <OrderPart of={of} />
        {line.reaches.length > 1 && (
          <section class="sheet-whole" aria-label="Reaches">
            <h2>Reaches</h2>
            <ReachTable line={line} system={system} />
          </section>
        )}
        {results.length > 1 && (
          <section class="sheet-whole" aria-label="Compare">
            <h2>Compare</h2>
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
        <ChecksPart
          checks={of.checks}
          overtops={
            tracedLine.value
              ? overtopsButForGap(tracedLine.value, line, now, system, mustFixOn(line))
              : null
          }
          system={system}
        />
        <MapFigure map={map} heightMm={heightMm - BESIDE_MAP_MM} />
        <GivenPart of={of} ground={ground.value} />
      </Sheet>
    </article>
  );
}

/** The line as it stands, ready to leave the program. */
function exported(line: SizedLine, alternative: Alignment): Exported {
  return {
    ...{ plan: plan.value, alternative, line, checks: chosenChecks.value },
    isTraced: tracedLine.value !== null,
    verticalDatum: verticalDatumWords(plan.value, ground.value),
    system: unitSystem.value,
  };
}
