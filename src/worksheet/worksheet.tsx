import "./worksheet.css";
import "./results.css";
import { ChecksBlock } from "./checks-block.tsx";
import { GroundBlock } from "./ground-block.tsx";
import { HoldingBlock } from "./holding-block.tsx";
import { LineBlock } from "./line-block.tsx";
import { QuantitiesBlock } from "./quantities-block.tsx";
import { SectionBlock } from "./section-block.tsx";
import { TimeBlock } from "./time-block.tsx";
import { WaterBlock } from "./water-block.tsx";

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
