import "./sideways-bars.css";
import { costIn, costUnit } from "../../shared/words/sideways-cost.ts";
import type { ProfileFrame } from "../drawing/profile/profile-frame.ts";
import { sidewaysNow } from "../live/search/why-here.ts";

/** Height of the longest bar, and between the lane and the plot, pixels. */
const BAR_PX = 18;
const CLEAR_PX = 3;
/** The longest bar stands for what this share of the savings stay under; longer ones are cut off. */
const LONGEST_SHARE = 0.95;

/**
 * Where moving the line sideways would save bags: a bar at each station, down from the top of the lane, in the color of
 * the side that it saves more by moving to. No bar where no move saves any.
 */
export function SidewaysBars({ frame }: { readonly frame: ProfileFrame }) {
  const costs = sidewaysNow.value;
  const { plot, widthPx, heightPx } = frame;
  const top = plot.top - CLEAR_PX - BAR_PX;
  if (!costs) {
    return (
      <svg class="sideways" width={widthPx} height={heightPx} aria-hidden="true">
        <text x={plot.left} y={top + 13}>
          Counting what a move saves.
        </text>
      </svg>
    );
  }
  const savings = savingsOf(costs);
  const longest = longestOf(savings.map(({ saved }) => saved));
  const paths = { water: "", land: "" };
  const { fromM, toM } = frame.stretch;
  for (const { atM, side, saved } of savings) {
    if (atM < fromM || atM > toM) continue;
    const highPx = BAR_PX * Math.min(1, saved / longest);
    paths[side] += `M${frame.x(atM).toFixed(1)} ${top}v${highPx.toFixed(1)}`;
  }
  return (
    <svg class="sideways" width={widthPx} height={heightPx} aria-hidden="true">
      <path class="sideways-zero" d={`M${plot.left} ${top}H${plot.right}`} />
      <path class="sideways-water" d={paths.water} />
      <path class="sideways-land" d={paths.land} />
      {savings.length === 0 && (
        <text x={plot.left} y={top + 14}>
          No small move saves bags.
        </text>
      )}
    </svg>
  );
}

/** What the bars mean: which color is which way, and what the longest stands for. */
export function SidewaysLegend({ frame }: { readonly frame: ProfileFrame | null }) {
  const costs = sidewaysNow.value;
  const savings = costs ? savingsOf(costs) : [];
  const longest = longestOf(savings.map(({ saved }) => saved));
  const scale =
    frame && savings.length > 0
      ? `The longest bar: ${Math.round(costIn(longest, frame.unitSystem))} ${costUnit(frame.unitSystem)}`
      : undefined;
  return (
    <span title={scale}>
      saves bags: <span class="sideways-to-water">to water</span>,{" "}
      <span class="sideways-to-land">to land</span>
    </span>
  );
}

interface Saving {
  readonly atM: number;
  readonly side: "water" | "land";
  /** Bags saved for each square metre the line sweeps. */
  readonly saved: number;
}

function savingsOf(costs: NonNullable<typeof sidewaysNow.value>): Saving[] {
  return Array.from(costs.chainageM).flatMap((atM, k) => {
    const water = -costs.waterBagsPerM2[k]!;
    const land = -costs.landBagsPerM2[k]!;
    if (!(water > 0 || land > 0)) return [];
    const isWater = water > 0 && !(land > water);
    return [{ atM, side: isWater ? "water" : "land", saved: isWater ? water : land } as const];
  });
}

function longestOf(savings: readonly number[]): number {
  const sizes = [...savings].sort((a, b) => a - b);
  return sizes[Math.floor(LONGEST_SHARE * (sizes.length - 1))] ?? 1;
}
