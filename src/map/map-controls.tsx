import { plan } from "../document/store.ts";
import { ground } from "../live/ground.ts";
import { lookAtGround, lookAtPlan } from "./camera.ts";
import { theMap } from "./the-map.ts";

const PATHS = {
  in: "M8 3v10M3 8h10",
  out: "M3 8h10",
  plan: "M5 5.2 9.3 3.8l2.4 2.9-.6 4.6-4.4.8-2.4-3.4zM1.5 4V1.5H4M12 1.5h2.5V4M14.5 12v2.5H12M4 14.5H1.5V12",
  ground: "M1.5 11.8 5 7.4l2.3 2.4 3-4.4 4.2 6.4zM1.5 4V1.5H4M12 1.5h2.5V4",
} as const;

interface ControlProps {
  readonly picture: keyof typeof PATHS;
  readonly label: string;
  readonly disabled?: boolean;
  readonly onPress: () => void;
}

/** Zoom in and out, and back to the plan or to the whole ground. */
export function MapControls() {
  const empty = plan.value.alignments.length + plan.value.structures.length === 0;
  return (
    <fieldset class="map-controls" aria-label="Map view">
      <Control picture="in" label="Zoom in" onPress={() => theMap().zoomIn()} />
      <Control picture="out" label="Zoom out" onPress={() => theMap().zoomOut()} />
      <Control
        picture="plan"
        label="Show the plan"
        disabled={empty}
        onPress={() => lookAtPlan(theMap())}
      />
      <Control
        picture="ground"
        label="Show all of the elevation data"
        disabled={!ground.value}
        onPress={() => lookAtGround(theMap())}
      />
    </fieldset>
  );
}

function Control({ picture, label, disabled, onPress }: ControlProps) {
  return (
    <button type="button" aria-label={label} title={label} disabled={disabled} onClick={onPress}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d={PATHS[picture]} />
      </svg>
    </button>
  );
}
