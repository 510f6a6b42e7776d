import { computed } from "@preact/signals";
import type { CanvasSource, Map as MapLibreMap } from "maplibre-gl";
import { buildingsOpen } from "../live/buildings/open.ts";
import { ground } from "../live/ground.ts";
import { shownMarks } from "../live/shown-marks.ts";
import { sizeAgain } from "../live/sizing-clock.ts";
import { pictureNow, tracedLine } from "../live/water-now.ts";
import { colours } from "./colours-now.ts";
import { keepCulvertQuestions } from "./culvert-questions.tsx";
import { onMap } from "./drawable.ts";
import { SHADE } from "./ground-layers.ts";
import { show } from "./sources.ts";
import { restingView } from "./view.ts";
import { keepWaterMarks } from "./water-marks.tsx";
import { installWayLayers, wayShapes } from "./way-shapes.ts";
import { keepWeakestMarks } from "./weakest-marks.ts";
import { paintPicture, stencilsOf } from "./wet-picture.ts";

/** The picture reaches this share of the view's sides beyond it, so that a small move shows no gap. */
const BEYOND_VIEW = 0.25;
const MOST_PIXEL_RATIO = 2;
const STALE_OPACITY = 0.25;
const LAYER = "traced-water";
const PICTURE_BELOW = "outside";

type Corners = [[number, number], [number, number], [number, number], [number, number]];

/**
 * Keeps on the map where the water really goes: what is below the surface and yet without water is painted over
 * the tint of the lower map, paler while it is being followed anew; the way in and the places to watch stand on
 * the upper one, and so do the places where the chosen line is weakest.
 */
export function keepWater(lower: MapLibreMap, upper: MapLibreMap): void {
  keepPicture(lower, upper);
  onMap([upper], () => installWayLayers(upper, colours.value));
  onMap([upper], () => {
    const way = shownMarks.value.has("water") ? (tracedLine.value?.wayIn ?? null) : null;
    show(upper, "way-in", wayShapes(way));
  });
  keepWaterMarks(upper);
  keepCulvertQuestions(upper);
  keepWeakestMarks(upper);
}

function keepPicture(lower: MapLibreMap, upper: MapLibreMap): void {
  const masks = computed(() => pictureNow.value?.masks ?? []);
  const isStale = computed(() => pictureNow.value?.isStale ?? true);
  const stencils = computed(() =>
    masks.value.map((mask) => ({ of: stencilsOf(mask), at: mask.corners })),
  );
  const canvas = document.createElement("canvas");

  onMap([lower], () => {
    restingView.value;
    ground.value;
    sizeAgain.value;
    const parts = stencils.value
      .map(({ of, at }) => ({ of: buildingsOpen.value ? { ...of, kept: null } : of, at }))
      .filter(({ of }) => of.low || of.kept);
    if (parts.length === 0) return remove(lower);
    const { clientWidth: width, clientHeight: height } = upper.getContainer();
    if (width === 0 || height === 0) return;
    const [padX, padY] = [width * BEYOND_VIEW, height * BEYOND_VIEW];
    const ratio = Math.min(MOST_PIXEL_RATIO, window.devicePixelRatio);
    canvas.width = Math.ceil((width + 2 * padX) * ratio);
    canvas.height = Math.ceil((height + 2 * padY) * ratio);
    const place = ([lng, lat]: readonly [number, number]) => {
      const { x, y } = upper.project({ lng, lat });
      return { x: x + padX, y: y + padY };
    };
    const placed = parts.map(({ of, at }) => ({
      of,
      at: [place(at[0]), place(at[1]), place(at[3])] as const,
    }));
    paintPicture(canvas, ratio, placed, colours.value);
    const corner = (x: number, y: number) => upper.unproject([x, y]).toArray();
    put(lower, canvas, [
      corner(-padX, -padY),
      corner(width + padX, -padY),
      corner(width + padX, height + padY),
      corner(-padX, height + padY),
    ]);
    fade(lower, isStale.peek());
  });
  onMap([lower], () => fade(lower, isStale.value));
}

function put(map: MapLibreMap, canvas: HTMLCanvasElement, coordinates: Corners): void {
  const source = map.getSource<CanvasSource>(LAYER);
  if (source) {
    source.setCoordinates(coordinates);
    source.play();
    map.once("render", () => source.pause());
    map.moveLayer(LAYER, aboveIt(map));
    return;
  }
  map.addSource(LAYER, { type: "canvas", canvas, coordinates, animate: false });
  map.addLayer(
    { id: LAYER, type: "raster", source: LAYER, paint: { "raster-fade-duration": 0 } },
    aboveIt(map),
  );
}

function aboveIt(map: MapLibreMap): string {
  return map.getLayer(SHADE) ? SHADE : PICTURE_BELOW;
}

function remove(map: MapLibreMap): void {
  if (map.getLayer(LAYER)) map.removeLayer(LAYER);
  if (map.getSource(LAYER)) map.removeSource(LAYER);
}

function fade(map: MapLibreMap, isStale: boolean): void {
  if (map.getLayer(LAYER))
    map.setPaintProperty(LAYER, "raster-opacity", isStale ? STALE_OPACITY : 1);
}
