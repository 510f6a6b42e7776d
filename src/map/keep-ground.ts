import { computed, effect, type ReadonlySignal, untracked } from "@preact/signals";
import type { FeatureCollection } from "geojson";
import type { Map as MapLibreMap, RasterDEMTileSource } from "maplibre-gl";
import type { ContoursRequest, ContoursResponse } from "../../shared/messages.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { tell } from "../document/notices.ts";
import { baseMap } from "../live/base-map.ts";
import { contours } from "../live/contours.ts";
import { accuracyNow, ground } from "../live/ground.ts";
import { unitSystem } from "../live/screen.ts";
import { sizeAgain } from "../live/sizing-clock.ts";
import { planAtMoment } from "../live/time-now.ts";
import { showBaseMap } from "./base-map.ts";
import { lookAtNew } from "./camera.ts";
import { colours } from "./colours-now.ts";
import { contourIntervalM, contourLabel, isIndexContour } from "./contour-interval.ts";
import { onMap } from "./drawable.ts";
import {
  askGroundAgain,
  installGround,
  installGroundFrame,
  paintGround,
  removeGround,
  setWater,
  steepness,
  tiltWater,
} from "./ground-layers.ts";
import { readingEnd, readingStep } from "./ground-reading.ts";
import { NOTHING, show } from "./sources.ts";
import { SCHEMES, tileAddress } from "./tile-address.ts";
import { restingView } from "./view.ts";
import { type WaterTint, waterAt, waterTint } from "./water-level.ts";

/** Contours are read this share of the view's width beyond it, so that a small move shows no gap. */
const BEYOND_VIEW = 0.12;
/** Failures of which the person is told elsewhere. */
const TOLD_ELSEWHERE = new Set(["cancelled", "engine/crashed", "ground/none"]);

/**
 * Keeps relief, water, holes and contours in step with ground, plan, theme and units.
 * @param map the map under the plan's, see the-map.ts
 * @param upper the map of the plan: its camera leads, and the contours' labels keep clear of its own
 */
export function keepGround(map: MapLibreMap, upper: MapLibreMap): void {
  const tint = computed(() => waterTint(planAtMoment.value));
  const level = computed(() => tint.value.levelM);
  const fall = computed(() => JSON.stringify(tint.value.fall));
  let turn = 0;

  onMap([map], () => {
    installGroundFrame(map, colours.value);
    const summary = ground.peek();
    if (summary) paintGround(map, summary, colours.value);
  });
  onMap([map], () => {
    const summary = ground.value;
    sizeAgain.value;
    readingEnd.value;
    turn += 1;
    if (!summary) return removeGround(map);
    const shown = { summary, turn, water: tint.peek(), onBaseMap: baseMap.peek().on };
    installGround(map, shown, colours.peek());
  });
  onMap([map], () => {
    const summary = ground.peek();
    if (readingStep.value === 0 || !summary) return;
    turn += 1;
    const shown = { summary, turn, water: tint.peek(), onBaseMap: baseMap.peek().on };
    askGroundAgain(map, shown);
  });
  effect(() => {
    if (ground.value) untracked(() => lookAtNewGround(upper));
  });
  onMap([map], () => {
    fall.value;
    const water = tint.peek();
    const address = tileAddress(SCHEMES.water, turn, { fall: water.fall });
    const source = map.getSource<RasterDEMTileSource>("water");
    const summary = ground.peek();
    if (!source || !summary || source.tiles?.[0] === address) return;
    const shown = { summary, turn, water, onBaseMap: baseMap.peek().on };
    tiltWater(map, shown, colours.peek());
  });
  onMap([map], () => {
    const summary = ground.value;
    level.value;
    fall.value;
    if (summary) setWater(map, summary, tint.peek(), colours.value);
  });
  onMap([map], () => showBaseMap(map, baseMap.value));
  keepContours(map, upper, tint);
}

/** Looks at ground just opened, and again where the rooms beside the map give it more or less space for it. */
function lookAtNewGround(map: MapLibreMap): void {
  const look = () => lookAtNew(map);
  look();
  map.on("resize", look);
  map.once("idle", () => map.off("resize", look));
}

function keepContours(map: MapLibreMap, upper: MapLibreMap, tint: ReadonlySignal<WaterTint>): void {
  effect(() => {
    const summary = ground.value;
    const { metresPerPx } = restingView.value;
    const [system, rmseM] = [unitSystem.value, rmse.value];
    sizeAgain.value;
    if (!summary) return contours.drop();
    const shown = { metresPerPx, steepness: steepness(summary), rmseM, system };
    contours.want(contoursIn(upper, contourIntervalM(shown)));
  });
  onMap([map, upper], () => {
    const last = contours.answered.value;
    const { levelM, fall } = tint.value;
    const isDry = (at: readonly [number, number], elevationM: number) =>
      elevationM > (fall ? waterAt(planAtMoment.peek(), at) : levelM);
    const { intervalM } = last?.of ?? { intervalM: 1 };
    const shapes = last ? contourShapes(last.answer, intervalM, unitSystem.value, isDry) : NOTHING;
    show(map, "contours", shapes);
    show(upper, "contours", shapes);
  });
  effect(() => {
    const failure = contours.failed.value?.answer;
    if (failure && !TOLD_ELSEWHERE.has(failure.code)) untracked(() => tell("error", failure));
  });
}

const rmse = computed(() => accuracyNow.value.rmseM);

/** What of the ground's contours is read for the map as it is looked at. */
function contoursIn(map: MapLibreMap, intervalM: number): ContoursRequest {
  const seen = map.getBounds();
  const wide = (seen.getEast() - seen.getWest()) * BEYOND_VIEW;
  const high = (seen.getNorth() - seen.getSouth()) * BEYOND_VIEW;
  return {
    bounds: [
      seen.getWest() - wide,
      seen.getSouth() - high,
      seen.getEast() + wide,
      seen.getNorth() + high,
    ],
    intervalM,
    widthPx: map.getContainer().clientWidth * (1 + 2 * BEYOND_VIEW) || 800,
  };
}

/** Contours above the water: none are drawn under it. */
function contourShapes(
  { lines }: ContoursResponse,
  intervalM: number,
  system: UnitSystem,
  isDry: (at: readonly [number, number], elevationM: number) => boolean,
): FeatureCollection {
  const above = lines.filter(({ elevationM, path }) => path[0] && isDry(path[0], elevationM));
  return {
    type: "FeatureCollection",
    features: above.map(({ elevationM, path }) => ({
      type: "Feature",
      properties: {
        index: isIndexContour(elevationM, intervalM),
        text: contourLabel(elevationM, intervalM, system),
      },
      geometry: { type: "LineString", coordinates: path as [number, number][] },
    })),
  };
}
