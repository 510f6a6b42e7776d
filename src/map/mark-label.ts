import { computed, effect } from "@preact/signals";
import { type Map as MapLibreMap, Marker } from "maplibre-gl";
import { reachAt } from "../../shared/reaches.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { stakeOnMapWords } from "../../shared/words/height-up.ts";
import { stationWords } from "../../shared/words/reading.ts";
import { plan } from "../document/store.ts";
import { spotAt } from "../drawing/line/along.ts";
import { labelOffset } from "../drawing/line/label-offset.ts";
import { STATION_LABEL, stationMarks } from "../drawing/line/station-marks.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import { type Box, type Obstacle, placeLabels, type Spot } from "../drawing/place-labels.ts";
import { isOverAt, readingAt } from "../drawing/profile/profile-reading.ts";
import { textWidth } from "../drawing/text-width.ts";
import { fieldOpen } from "../live/field.ts";
import { chosenLine } from "../live/results.ts";
import { markedM, unitSystem } from "../live/screen.ts";
import { dragging } from "./drawing-state.ts";
import { restingView } from "./view.ts";

const TYPE_PX = 14;
const SIDES_PX = 20;
const SIGN_PX = 20;
const HIGH_PX = 26;
/** How far from the line the label may stand, and how far to either side of square, nearest first. */
const AWAY_PX = [44, 58, 76, 100, 130];
const TURNS = [0, 30, -30, 60, -60, 85, -85].map((degrees) => (degrees * Math.PI) / 180);
/** Half the room that a corner, the line and a station take. */
const LINE_PX = 9;
const STATION = { widePx: 42, highPx: 18, typePx: 12.5 };
/** The scale at the lower left. */
const SCALE_BAR_PX = { wide: 190, high: 56 };
/** What else is drawn over the map's edges. */
const EDGE_PX = 8;
/** The scale lies over the foot of the map in the field. */
const SCALE_PX = 36;

/** Keeps the marked station's label on the map, beside the line: red only where the levee is over its limit. */
export function keepMarkLabel(map: MapLibreMap): void {
  const element = document.createElement("div");
  element.className = "mark-label";
  element.setAttribute("aria-hidden", "true");
  const marker = new Marker({ element, anchor: "center" });
  const obstacles = computed(() => (chosenLine.value ? obstaclesOf(map, chosenLine.value) : []));
  effect(() => {
    restingView.value;
    const line = chosenLine.value;
    const reading = line && readingAt(line, markedM.value ?? line.totals.greatestHeightAtM);
    const spot = reading && spotAt(line.walk, reading.chainageM);
    if (!line || !reading || !spot || dragging.value) {
      marker.remove();
      return;
    }
    const isOver = isOverAt(line, reading.chainageM);
    const inField = fieldOpen.value;
    const text = inField
      ? stakeOnMapWords(
          { ...reading, chainageM: markedM.value ?? reading.chainageM },
          unitSystem.value,
        )
      : stationWords(reading, unitSystem.value, reachAt(line, reading.chainageM).limitM);
    const at = map.project({ lng: spot.at[0], lat: spot.at[1] });
    const side = waterSideIn(plan.peek(), line.id);
    const toWater = [spot.left[0] * side, -spot.left[1] * side] as const;
    const widePx = textWidth(text, TYPE_PX) + SIDES_PX + (isOver ? SIGN_PX : 0);
    const { clientWidth: right, clientHeight: bottom } = map.getContainer();
    const bounds = {
      left: EDGE_PX,
      top: EDGE_PX,
      right: right - EDGE_PX,
      bottom: bottom - EDGE_PX - (inField ? SCALE_PX : 0),
    };
    const spots = spotsRound(at, toWater, widePx);
    const scale = {
      left: 0,
      right: SCALE_BAR_PX.wide,
      top: bottom - SCALE_BAR_PX.high,
      bottom,
      cost: 6,
    };
    const about = [...obstacles.value, scale];
    const [label] = placeLabels([{ key: "mark", text, spots }], about, bounds);
    const box = label?.box ?? spots[0]!;
    element.textContent = text;
    element.dataset.over = String(isOver);
    marker
      .setOffset([(box.left + box.right) / 2 - at.x, (box.top + box.bottom) / 2 - at.y])
      .setLngLat([...spot.at])
      .addTo(map);
  });
}

/** Places round a station, those square to the line on the water side first. */
function spotsRound(
  at: { readonly x: number; readonly y: number },
  [east, down]: readonly [number, number],
  widePx: number,
): Spot[] {
  return [1, -1].flatMap((side) =>
    AWAY_PX.flatMap((awayPx, away) =>
      TURNS.map((turn, turned): Spot => {
        const x = side * (east * Math.cos(turn) - down * Math.sin(turn));
        const y = side * (east * Math.sin(turn) + down * Math.cos(turn));
        const centerX = at.x + x * (awayPx + widePx / 2 - 20);
        const centerY = at.y + y * awayPx;
        const cost = (side < 0 ? 60 : 0) + 12 * away + 4 * turned;
        return { ...boxRound(centerX, centerY, widePx, HIGH_PX), cost };
      }),
    ),
  );
}

/** The line itself and its stations, where they are on the map now. */
function obstaclesOf(map: MapLibreMap, line: SizedLine): Obstacle[] {
  const { metresPerPx } = restingView.value;
  const { lonLat } = line.walk;
  const onLine: Obstacle[] = [];
  let last = { x: Number.NaN, y: Number.NaN };
  for (let i = 0; i < lonLat.length; i += 2) {
    const at = map.project({ lng: lonLat[i]!, lat: lonLat[i + 1]! });
    if (Math.hypot(at.x - last.x, at.y - last.y) < LINE_PX) continue;
    onLine.push({ ...boxRound(at.x, at.y, 2 * LINE_PX, 2 * LINE_PX), cost: 2 });
    last = at;
  }
  const side = waterSideIn(plan.peek(), line.id);
  const { features } = stationMarks(line, metresPerPx, unitSystem.value, side);
  const stations = features.flatMap(({ geometry, properties }): Obstacle[] => {
    if (geometry.type !== "Point") return [];
    const [lng, lat] = geometry.coordinates as [number, number];
    const { x, y } = map.project({ lng, lat });
    const [right, down] = labelOffset(properties?.direction, STATION_LABEL);
    const { widePx, highPx, typePx } = STATION;
    return [{ ...boxRound(x + right * typePx, y + down * typePx, widePx, highPx), cost: 3 }];
  });
  return [...onLine, ...stations];
}

function boxRound(x: number, y: number, widePx: number, highPx: number): Box {
  return {
    left: x - widePx / 2,
    right: x + widePx / 2,
    top: y - highPx / 2,
    bottom: y + highPx / 2,
  };
}
