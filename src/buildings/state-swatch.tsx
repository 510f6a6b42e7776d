import { useId } from "preact/hooks";
import type { ShownState } from "../../shared/buildings/shown-states.ts";
import { Hatches } from "../drawing/hatches.tsx";

/** A small building in the look that its state has on the map: filled, hatched, crossed, a clock, a question mark. */
export function StateSwatch({ state }: { readonly state: ShownState }) {
  const id = useId();
  return (
    <svg
      class={`county-swatch county-swatch-${state}`}
      viewBox="0 0 18 14"
      width="18"
      height="14"
      aria-hidden="true"
    >
      {state === "over-limit" && <Hatches id={id} />}
      <rect
        x="1"
        y="1"
        width="16"
        height="12"
        {...(state === "over-limit" ? { style: { fill: `url(#${id}-over)` } } : {})}
      />
      {state === "no-room" && <path d="M1 1l16 12M17 1 1 13" />}
      {state === "too-late" && (
        <>
          <circle cx="9" cy="7" r="4" />
          <path d="M9 4.6V7l1.8 1" />
        </>
      )}
      {state === "no-data" && (
        <text x="9" y="11" text-anchor="middle">
          ?
        </text>
      )}
    </svg>
  );
}
