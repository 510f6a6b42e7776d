import { plan } from "../document/store.ts";
import { bearing } from "./plan-shapes.ts";

/** Which way the river flows; nothing before its direction is given. */
export function FlowMark() {
  const { flow } = plan.value;
  if (!flow) return null;
  const turn = bearing(flow.from, flow.to) - 90;
  return (
    <p class="map-river">
      Flow
      <svg viewBox="0 0 30 12" width="30" height="12" role="img" aria-label="flow direction">
        <path d="M1 6h27M22 1l6 5-6 5" transform={`rotate(${turn.toFixed(1)} 15 6)`} />
      </svg>
    </p>
  );
}
