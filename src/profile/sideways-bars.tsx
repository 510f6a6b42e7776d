import "./sideways-bars.css";
import { costIn, costUnit } from "../../shared/words/sideways-cost.ts";
import type { ProfileFrame } from "../drawing/profile/profile-frame.ts";
import { sidewaysNow } from "../live/siting/why-here.ts";

/** Height of a row and of its longest bar, pixels; on a low drawing the smaller ones. */
const TALL = { rowPx: 20, barPx: 9 };
const LOW = { rowPx: 13, barPx: 6 };
const LOW_PLOT_PX = 130;
const FOOT_PX = 3;
/** The longest bar stands for what this share of the stations stay under; longer ones are cut off. */
const LONGEST_SHARE = 0.95;

/**
 * What moving the line would cost, along the foot of the profile: one row for a move toward the water and one
 * toward the land. Bars up cost, bars down save; where a row has none the move is not possible.
 */
export function SidewaysBars({ frame }: { readonly frame: ProfileFrame }) {
  const costs = sidewaysNow.value;
  if (!costs) return null;
  const { plot, widthPx, heightPx, unitSystem } = frame;
  const isLow = plot.bottom - plot.top < LOW_PLOT_PX;
  const { rowPx, barPx } = isLow ? LOW : TALL;
  const rows = [
    { name: "toward the water", values: costs.waterBagsPerM2 },
    { name: "toward the land", values: costs.landBagsPerM2 },
  ];
  const longest = longestOf(rows.flatMap(({ values }) => [...values]));
  const top = plot.bottom - FOOT_PX - rows.length * rowPx;
  const scale = `longest bar ${Math.round(costIn(longest, unitSystem))} ${costUnit(unitSystem)}`;
  return (
    <svg class="sideways" width={widthPx} height={heightPx} aria-hidden="true">
      <rect
        class="sideways-back"
        x={plot.left}
        y={top - (isLow ? 1 : 14)}
        width={plot.right - plot.left}
        height={plot.bottom - top + (isLow ? 0 : 13)}
      />
      {rows.map(({ name, values }, row) => {
        const y = top + (row + 0.5) * rowPx;
        const { cost, saving } = barPaths(frame, costs.chainageM, values, y, { barPx, longest });
        return (
          <g key={name}>
            <path class="sideways-zero" d={`M${plot.left} ${y}H${plot.right}`} />
            <path class="sideways-cost" d={cost} />
            <path class="sideways-saving" d={saving} />
            <text x={plot.left + 5} y={y + 3.5}>
              {name}
            </text>
          </g>
        );
      })}
      {!isLow && (
        <text x={plot.right - 5} y={top - 3} text-anchor="end">
          Moved sideways: up costs, down saves; {scale}
        </text>
      )}
    </svg>
  );
}

function longestOf(values: readonly number[]): number {
  const sizes = values.map(sizeOf).sort((a, b) => a - b);
  const longest = sizes[Math.floor(LONGEST_SHARE * (sizes.length - 1))] ?? 0;
  return longest > 0 ? longest : 1;
}

function sizeOf(value: number): number {
  return Number.isNaN(value) ? 0 : Math.abs(value);
}

function barPaths(
  { x, stretch }: ProfileFrame,
  chainageM: Float64Array,
  values: Float64Array,
  y: number,
  { barPx, longest }: { readonly barPx: number; readonly longest: number },
): { readonly cost: string; readonly saving: string } {
  const bars = { cost: "", saving: "" };
  for (const [k, atM] of chainageM.entries()) {
    const value = values[k]!;
    if (Number.isNaN(value) || atM < stretch.fromM || atM > stretch.toM) continue;
    const lengthPx = barPx * Math.min(1, Math.max(-1, value / longest));
    bars[value < 0 ? "saving" : "cost"] += `M${x(atM).toFixed(1)} ${y}v${(-lengthPx).toFixed(1)}`;
  }
  return bars;
}
