import "./worksheet.css";
import "./results.css";
import { ChecksBlock } from "./checks/checks-block.tsx";
import { GroundBlock } from "./ground/ground-block.tsx";
import { HoldingBlock } from "./holding/holding-block.tsx";
import { LineBlock } from "./line/line-block.tsx";
import { QuantitiesBlock } from "./quantities/quantities-block.tsx";
import { SectionBlock } from "./section/section-block.tsx";
import { TimeBlock } from "./time/time-block.tsx";
import { WaterBlock } from "./water/water-block.tsx";

/** The job in its order: ground, water, line, section, quantities, holding, time, checks. */
export function Worksheet() {
  return (
    <div class="worksheet">
      <div class="worksheet-given">
        <GroundBlock />
        <WaterBlock />
        <LineBlock />
        <SectionBlock />
      </div>
      <div class="worksheet-found">
        <QuantitiesBlock />
        <HoldingBlock />
        <TimeBlock />
        <ChecksBlock />
      </div>
    </div>
  );
}
