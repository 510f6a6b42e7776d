import type { PlanScale } from "./plan-scale.ts";

/** An arrow to the north, its middle at the place given, millimetres. */
export function NorthArrow({ xMm, yMm }: { xMm: number; yMm: number }) {
  return (
    <g class="plan-north" transform={`translate(${xMm} ${yMm})`}>
      <path d="M0-6 2.2 3 0 1.6-2.2 3z" />
      <text class="plan-label" y="7" text-anchor="middle">
        N
      </text>
    </g>
  );
}

interface ScaleBarProps {
  readonly scale: PlanScale;
  readonly xMm: number;
  readonly yMm: number;
}

/** A bar of a round length with the scale in words. */
export function ScaleBar({ scale, xMm, yMm }: ScaleBarProps) {
  const lengthMm = scale.barM / scale.mPerMm;
  return (
    <g transform={`translate(${xMm} ${yMm})`}>
      <path class="plan-bar" d={`M0-1.5V0H${lengthMm}V-1.5M${lengthMm / 2}-1V0`} />
      <text class="plan-label" y="-2.5">
        0
      </text>
      <text class="plan-label" x={lengthMm} y="-2.5" text-anchor="middle">
        {scale.barWords}
      </text>
      <text class="plan-label" x={lengthMm + 9} y="0">
        {scale.words}
      </text>
    </g>
  );
}
