import type { Map as MapLibreMap, PointLike } from "maplibre-gl";
import { nearestChainage } from "../drawing/line/along.ts";
import { chooseAlternative } from "../live/actions.ts";
import { mapIsLent } from "../live/buildings/open.ts";
import { chosenLine } from "../live/results.ts";
import { tool } from "../live/screen.ts";
import { view } from "./view.ts";

const REACH_PX = 7;
/** Where the chosen line is as near as this, a press means it and not a line beside it. */
const OWN_PX = 16;

/** A press on the dotted line of another alternative chooses it. */
export function keepChoosing(map: MapLibreMap): void {
  map.on("click", ({ point, lngLat }) => {
    if (tool.peek() !== "move" || mapIsLent.peek()) return;
    const line = chosenLine.peek();
    const own = line && nearestChainage(line.walk, [lngLat.lng, lngLat.lat]);
    if (own && own.awayM < OWN_PX * view.peek().metresPerPx) return;
    const box: [PointLike, PointLike] = [
      [point.x - REACH_PX, point.y - REACH_PX],
      [point.x + REACH_PX, point.y + REACH_PX],
    ];
    const [hit] = map.queryRenderedFeatures(box, { layers: ["other", "other-names"] });
    if (hit) chooseAlternative(String(hit.properties.id));
  });
}
