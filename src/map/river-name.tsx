import { plan } from "../document/store.ts";
import { bearing } from "./plan-shapes.ts";

/** The river as its gauge is named, and which way it flows; nothing before its direction is given. */
export function RiverName() {
  const { flow, gauge } = plan.value;
  if (!flow) return null;
  const turn = bearing(flow.from, flow.to) - 90;
  return (
    <p class="map-river">
      {gauge?.name || "River flow"}
      <svg viewBox="0 0 30 12" width="30" height="12" role="img" aria-label="flow direction">
        <path d="M1 6h27M22 1l6 5-6 5" transform={`rotate(${turn.toFixed(1)} 15 6)`} />
      </svg>
    </p>
  );
}
