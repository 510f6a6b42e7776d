import { plan } from "../../document/store.ts";
import { ByChoice } from "./by-choice.tsx";
import { FlowFields } from "./flow-fields.tsx";
import { FreeboardChoices } from "./freeboard-choices.tsx";
import { GaugeFields } from "./gauge-fields.tsx";
import { MomentSlider } from "./moment-slider.tsx";
import { WaterReach } from "./water-reach.tsx";

/** Where the water's level comes from, when it is how high, and what it reaches. */
export function GaugeBody() {
  const { water } = plan.value;
  return (
    <>
      <ByChoice water={water} />
      <MomentSlider />
      <FreeboardChoices />
      {water.by === "stage" && <GaugeFields />}
      <FlowFields />
      <WaterReach />
    </>
  );
}
