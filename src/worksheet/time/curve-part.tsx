import type { LineTime } from "../../../shared/time/types.ts";
import { formatCount } from "../../../shared/units.ts";
import {
  limitReachedWords,
  nextFootName,
  nextFootWords,
} from "../../../shared/words/stage-curve.ts";
import { unitsOf } from "../../../shared/words/units.ts";
import { plan } from "../../document/store.ts";
import { CrestTable, CURVE_PX, CurveChart } from "../../drawing/time-curve.tsx";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { useSize } from "../../ui/use-size.ts";
import { TimeAmount } from "./time-amount.tsx";

/** What another foot of water would cost, and what each band of the forecast would take. */
export function CurvePart({ time }: { readonly time: LineTime }) {
  const system = unitSystem.value;
  const [ref, size] = useSize<HTMLDivElement>();
  const { curve, crests } = time;
  const next =
    curve.nextFoot &&
    curve.nextFoot.bags > 0 &&
    `${formatCount(curve.nextFoot.bags)} for the ${nextFootName(unitsOf(system))}`;
  return (
    <Disclosure id="time-curve" title="Bags against stage" level="part" summary={next}>
      {curve.points.length > 1 && (
        <div class="time-chart-place" ref={ref} style={{ height: CURVE_PX }}>
          {size && (
            <CurveChart plan={plan.value} time={time} system={system} widthPx={size.widthPx} />
          )}
        </div>
      )}
      <p class="time-next">
        <TimeAmount make="nextFoot" title="The next foot" time={time}>
          {nextFootWords(curve, unitsOf(system))}
        </TimeAmount>
      </p>
      <p class="hint">{limitReachedWords(plan.value, time, system)}</p>
      {crests.length > 0 && <CrestTable crests={crests} plan={plan.value} system={system} />}
    </Disclosure>
  );
}
