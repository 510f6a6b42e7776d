import "./worksheet.css";
import "./results.css";
import { useState } from "preact/hooks";
import { ChecksBlock } from "./checks/checks-block.tsx";
import { GroundBlock } from "./ground/ground-block.tsx";
import { HoldingBlock } from "./holding/holding-block.tsx";
import { LineBlock } from "./line/line-block.tsx";
import { QuantitiesBlock } from "./quantities/quantities-block.tsx";
import { SectionBlock } from "./section/section-block.tsx";
import { TimeBlock } from "./time/time-block.tsx";
import { VerdictStrip } from "./verdict/verdict-strip.tsx";
import { WaterBlock } from "./water/water-block.tsx";

/** Scrolled further than this, the verdict is short, pixels. */
const SHORT_FROM_PX = 24;
/** What is to be scrolled at least for the verdict to become short: it must not grow again by that. */
const SHORT_ROOM_PX = 260;

/** The answer first, then water and quantities, then everything behind them as rows of one line each. */
export function Worksheet() {
  const [isShort, setShort] = useState(false);
  return (
    <div class="worksheet">
      <VerdictStrip isShort={isShort} />
      <div
        class="worksheet-rest"
        onScroll={(event) => setShort((was) => isShortAt(event.currentTarget, was))}
      >
        <div class="worksheet-first">
          <WaterBlock />
          <QuantitiesBlock />
        </div>
        <div class="worksheet-rows">
          <GroundBlock />
          <LineBlock />
          <SectionBlock />
          <HoldingBlock />
          <TimeBlock />
          <ChecksBlock />
        </div>
      </div>
    </div>
  );
}

function isShortAt({ scrollTop, scrollHeight, clientHeight }: HTMLElement, was: boolean): boolean {
  if (was) return scrollTop > 0;
  return scrollTop > SHORT_FROM_PX && scrollHeight - clientHeight > SHORT_ROOM_PX;
}
