import { plan } from "../document/store.ts";
import { ground } from "../live/ground.ts";
import { isLookingAtPlan, lookAtGround, lookAtPlan } from "./camera.ts";
import { theMap } from "./the-map.ts";

const PATHS = { in: "M8 3v10M3 8h10", out: "M3 8h10" } as const;

/** Zoom in and out, and back to the plan; pressed there, to the whole of the elevation data. */
export function MapControls() {
  const { alignments, structures } = plan.value;
  const isEmpty = alignments.length + structures.length === 0;
  const fit = () => {
    const map = theMap();
    if (!map) return;
    if (isEmpty || isLookingAtPlan(map)) lookAtGround(map);
    else lookAtPlan(map);
  };
  return (
    <fieldset class="map-controls" aria-label="Map view">
      <Zoom picture="in" label="Zoom in" onPress={() => theMap()?.zoomIn()} />
      <Zoom picture="out" label="Zoom out" onPress={() => theMap()?.zoomOut()} />
      <button
        type="button"
        title="Fit the plan; pressed again, all of the elevation data"
        disabled={isEmpty && !ground.value}
        onClick={fit}
      >
        Fit
      </button>
    </fieldset>
  );
}

interface ZoomProps {
  readonly picture: keyof typeof PATHS;
  readonly label: string;
  readonly onPress: () => void;
}

function Zoom({ picture, label, onPress }: ZoomProps) {
  return (
    <button type="button" aria-label={label} title={label} onClick={onPress}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d={PATHS[picture]} />
      </svg>
    </button>
  );
}
