import { failureText } from "../../shared/words/failure.ts";
import "./pages.css";
import { useEffect, useRef } from "preact/hooks";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Failure } from "../../shared/failure.ts";
import type { Alignment } from "../../shared/plan.ts";
import { planNumber } from "../../shared/plan-number.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { printedWords } from "../../shared/words/sheet.ts";
import { verticalDatumWords } from "../../shared/words/vertical-datum.ts";
import { chosenAlternative } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { ground } from "../live/ground.ts";
import { pagesReady } from "../live/pages-ready.ts";
import { sized } from "../live/results.ts";
import { pagesOpen, unitSystem } from "../live/screen.ts";
import { simulatedLine } from "../live/simulated.ts";
import { uncounted } from "../live/uncounted.ts";
import { chosenChecks, tracedLine, waterNow } from "../live/water-now.ts";
import { useSize } from "../ui/use-size.ts";
import { BuildPlanSheet } from "./build-plan-part.tsx";
import { BuildSequenceSheet } from "./build-sequence-part.tsx";
import { CrossSectionsSheet } from "./cross-sections-part.tsx";
import type { MapForPages } from "./map-figure.tsx";
import { OfficeSheet } from "./office-sheet.tsx";
import { OrderSheet } from "./order-part.tsx";
import { PagesBar } from "./pages-bar.tsx";
import { pageRule, paper, paperWidthPx } from "./paper.ts";
import { StakesSheet } from "./stakes-part.tsx";
import type { SheetFrame } from "./title-block.tsx";
import { WatchSheet } from "./watch-part.tsx";

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
  const line = simulatedLine.value;
  const alternative = chosenAlternative.value;
  const ready = pagesReady.value;
  const number = line && alternative && planNumber(plan.value, alternative, line);
  return (
    <div
      class="sheets on-paper"
      ref={room}
      tabIndex={-1}
      role="dialog"
      aria-label="Print"
      data-pages={line && alternative ? (ready === "ready" ? "ready" : "waiting") : "none"}
      data-line={alternative?.id}
      data-plan-number={number}
    >
      <style>{pageRule(paper.value)}</style>
      {line && alternative && ready !== "ready" ? (
        <NoPages words={waitingWords(ready)} />
      ) : line && alternative ? (
        <>
          <PagesBar of={exported(line, alternative)} map={map} />
          <Sheets line={line} alternative={alternative} number={number!} map={map} />
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
  /** The plan's number. */
  readonly number: string;
  readonly map: MapForPages;
}

/** The crew's sheets in the order of the work, then what is ticked of the office's. */
function Sheets({ line, alternative, number, map }: SheetsProps) {
  const [room, size] = useSize<HTMLDivElement>();
  const of = exported(line, alternative);
  const { holding, time } = line;
  const results = plan.value.alignments.flatMap((each) => sized.value.get(each.id) ?? []);
  const frame = {
    ...{ of, ground: ground.value, printed: printedWords(new Date(), unitSystem.value) },
    number,
  };
  const structures = waterNow.value?.structures ?? [];
  const watch = { traced: tracedLine.value, structures };
  const crew = [
    (frame: SheetFrame) => <BuildPlanSheet {...frame} />,
    (frame: SheetFrame) => <StakesSheet {...frame} />,
    (frame: SheetFrame) => <CrossSectionsSheet {...frame} />,
    holding && ((frame: SheetFrame) => <WatchSheet {...frame} {...watch} holding={holding} />),
    time?.stretches.length &&
      ((frame: SheetFrame) => <BuildSequenceSheet {...frame} time={time} results={results} />),
    (frame: SheetFrame) => <OrderSheet {...frame} />,
  ].filter((each) => typeof each === "function");
  const fit = size ? Math.min(1, size.widthPx / paperWidthPx(paper.value)) : 1;
  return (
    <div ref={room}>
      <article class="sheet" style={{ "--fit": fit }}>
        {crew.map((draw, index) =>
          draw({ ...frame, label: `Sheet ${index + 1} of ${crew.length}` }),
        )}
        <OfficeSheet {...frame} label="Office pages" results={results} map={map} />
      </article>
    </div>
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
