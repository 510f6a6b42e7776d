import type { ProfileFrame } from "./profile-frame.ts";
import { stationLabels } from "./station-labels.ts";

/** Elevations at the left over a grid, stations under the foot. */
export function Axes({ frame }: { readonly frame: ProfileFrame }) {
  const { plot } = frame;
  return (
    <g class="profile-axes">
      {frame.yTicks.map(({ px, label }) => (
        <g key={px}>
          <path class="profile-grid" d={`M${plot.left} ${px}H${plot.right}`} />
          <text x={plot.left - 7} y={px + 4} text-anchor="end">
            {label}
          </text>
        </g>
      ))}
      <path
        class="profile-tick-small"
        d={frame.stationPx.map((px) => `M${px} ${plot.bottom}v3`).join("")}
      />
      {frame.xTicks.map(({ px, label }) => (
        <g key={px}>
          <path class="profile-tick" d={`M${px} ${plot.bottom}v6`} />
          <text x={px} y={plot.bottom + 18} text-anchor="middle">
            {label}
          </text>
        </g>
      ))}
      <path class="profile-axis" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
    </g>
  );
}

/** Elevations at the left, stations in the ground at the foot. */
export function ScreenAxes({ frame }: { readonly frame: ProfileFrame }) {
  const { plot } = frame;
  return (
    <g class="profile-axes">
      {frame.yTicks.map(({ px, label }) => (
        <g key={px}>
          <path class="profile-tick" d={`M${plot.left} ${px}h-6`} />
          <text x={plot.left - 9} y={px + 4} text-anchor="end">
            {label}
          </text>
        </g>
      ))}
      {stationLabels(frame).map(({ px, x, label }) => (
        <g key={px}>
          <path class="profile-tick" d={`M${px} ${plot.bottom}v-5`} />
          <text x={x} y={plot.bottom - 8} text-anchor="middle">
            {label}
          </text>
        </g>
      ))}
      <path class="profile-axis" d={`M${plot.left} ${plot.top}V${plot.bottom}H${plot.right}`} />
    </g>
  );
}
