import "../pages.css";
import "./ring-list.css";
import { useEffect, useRef } from "preact/hooks";
import { RING_LIST } from "../../../shared/words/ring-list.ts";
import { ringListOpen } from "../../live/buildings/open.ts";
import { ringList } from "../../live/buildings/ring-list.ts";
import { Icon } from "../../ui/icons.tsx";
import { useSize } from "../../ui/use-size.ts";
import { pageRule, paper, paperWidthPx } from "../paper.ts";
import { PaperChoice } from "../paper-choice.tsx";
import { RingListSheet } from "./ring-list-sheet.tsx";

/** The rings to build by crew and deadline, and who is not ringed, laid out for paper. */
export function RingListRoom() {
  const room = useRef<HTMLDivElement>(null);
  const [within, size] = useSize<HTMLDivElement>();
  useEffect(() => {
    room.current?.focus();
    const onKey = (event: KeyboardEvent) => {
      if (event.key === "Escape") leave();
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, []);
  const list = ringList.value;
  const fit = size ? Math.min(1, size.widthPx / paperWidthPx(paper.value)) : 1;
  return (
    <div
      class="sheets on-paper"
      ref={room}
      tabIndex={-1}
      role="dialog"
      aria-label={RING_LIST.label}
    >
      <style>{pageRule(paper.value)}</style>
      <div class="sheets-bar" role="toolbar" aria-label={RING_LIST.label}>
        <button type="button" class="tool-button" onClick={leave}>
          <Icon name="left" /> {RING_LIST.back}
        </button>
        <PaperChoice />
        <button type="button" class="tool-button" disabled={!list} onClick={() => window.print()}>
          <Icon name="print" /> Print
        </button>
      </div>
      {list ? (
        <div ref={within}>
          <article class="sheet" style={{ "--fit": fit }}>
            <RingListSheet list={list} />
          </article>
        </div>
      ) : (
        <div class="sheets-none">
          <p role="status">{RING_LIST.none}</p>
        </div>
      )}
    </div>
  );
}

function leave(): void {
  ringListOpen.value = false;
}
