import type { Flow } from "../../shared/plan.ts";
import { PLAN_WORDS } from "../../shared/words/build-sheet.ts";
import type { ToSpot } from "./plan-paths.ts";
import type { PlanScale } from "./plan-scale.ts";

/** An arrow to the north, its middle at the place given, millimetres. */
export function NorthArrow({ xMm, yMm }: { xMm: number; yMm: number }) {
  return (
    <g class="plan-north" transform={`translate(${xMm} ${yMm})`}>
      <path d="M0-4.5 2.4 6 0 4.2-2.4 6z" />
      <text class="plan-label plan-strong" y="-5.2" text-anchor="middle">
        N
      </text>
    </g>
  );
}

/** Room of the river's arrow and its word, millimetres. */
const FLOW_MM = { width: 34, height: 12 } as const;

interface FlowArrowProps {
  readonly flow: Flow | null;
  readonly toSpot: ToSpot;
  readonly xMm: number;
  readonly yMm: number;
}

/** Which way the river flows, in its true direction on the plan. */
export function FlowArrow({ flow, toSpot, xMm, yMm }: FlowArrowProps) {
  if (!flow) {
    return (
      <text class="plan-label plan-small" x="0" y={yMm + 4}>
        {PLAN_WORDS.noFlow}
      </text>
    );
  }
  const [from, to] = [toSpot(flow.from), toSpot(flow.to)];
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return (
    <>
      <rect class="plan-paper" x="0" y={yMm - 6.5} width={FLOW_MM.width} height={FLOW_MM.height} />
      <g class="plan-flow" transform={`translate(5 ${yMm - 1}) rotate(${angle.toFixed(1)})`}>
        <path class="plan-flow-shaft" d="M-4.6 0H2" />
        <path d="M4.8 0 1-1.7V1.7z" />
      </g>
      <text class="plan-label plan-side" x={xMm - 5} y={yMm + 0.2}>
        {PLAN_WORDS.river}
      </text>
    </>
  );
}

interface ScaleBarProps {
  readonly scale: PlanScale;
  readonly xMm: number;
  readonly yMm: number;
}

/** A bar of a round length, half of it filled, with the scale in words. */
export function ScaleBar({ scale, xMm, yMm }: ScaleBarProps) {
  const lengthMm = scale.barM / scale.mPerMm;
  const half = lengthMm / 2;
  return (
    <g transform={`translate(${xMm} ${yMm})`}>
      <rect class="plan-paper" x="-3" y="-10" width={lengthMm + 10} height="11" />
      <path class="plan-bar" data-length-m={scale.barM} d={`M0-5.4H${lengthMm}V-4H0z`} />
      <path class="plan-bar-half" d={`M0-5.4H${half}V-4H0z`} />
      {[
        { x: 0, text: "0" },
        { x: half, text: scale.barWords[0] },
        { x: lengthMm, text: scale.barWords[1] },
      ].map(({ x, text }) => (
        <text key={text} class="plan-label plan-small" x={x} y="-6.4" text-anchor="middle">
          {text}
        </text>
      ))}
      <text class="plan-label plan-strong" x="0" y="-0.4">
        {scale.words}
      </text>
    </g>
  );
}
