import { computed, effect, untracked } from "@preact/signals";
import type { LineString, Polygon } from "geojson";
import type { Map as MapLibreMap } from "maplibre-gl";
import type { TerraDraw } from "terra-draw";
import { failureOf } from "../../shared/failure.ts";
import type { Alignment, LonLat } from "../../shared/plan.ts";
import { chosenId } from "../document/chosen.ts";
import { tell } from "../document/notices.ts";
import { apply, endGesture, plan } from "../document/store.ts";
import { mapIsLent } from "../live/buildings/open.ts";
import { sizedLags } from "../live/current.ts";
import { chosenLine } from "../live/results.ts";
import { tool } from "../live/screen.ts";
import { colours } from "./colours-now.ts";
import { cornerNear, keepCornerPopover, type MapPlace } from "./corner-popover.tsx";
import { rounded, sameCorners } from "./corner-step.ts";
import { finishDrawing, reachOf } from "./draw-input.ts";
import { type HandleLook, MODE_OF, makeDraw, setDrawLooks } from "./draw-modes.ts";
import { isDrawable } from "./drawable.ts";
import { dragging, drawnCorners, isNearLine, tappedCorner } from "./drawing-state.ts";
import { EditGesture } from "./edit-gesture.ts";
import { cornersOf, drawnEdit } from "./finish-shape.ts";
import { keepKeyDrawing } from "./key-drawing.ts";
import { restingView } from "./view.ts";

const LARGEST_CORNER_PX = 5;
const LEAST_CORNER_PX = 2;
const LARGE_LEG_PX = 100;

/** The chosen alternative as the drawing library holds it. */
interface Held {
  readonly featureId: string | number;
  readonly alternativeId: string;
  readonly kind: Alignment["kind"];
}

/**
 * Drawing by the tool that is set, and editing the corners of the chosen alternative. The document is the
 * only truth: what is drawn becomes an edit, and what the document says is written back to the drawing.
 */
export function keepDrawing(map: MapLibreMap): void {
  const chosen = computed(() => plan.value.alignments.find((each) => each.id === chosenId.value));
  const canvas = map.getCanvas();
  let reach = reachOf(matchMedia("(pointer: coarse)").matches ? "touch" : "mouse");
  const isOnTapped = (at: MapPlace) =>
    tappedCorner.peek() !== null && cornerNear(map, at, reach)?.index === tappedCorner.peek();
  const mayDrag = (at: MapPlace) => reach !== reachOf("touch") || isOnTapped(at);
  const make = () => makeDraw(map, colours.peek(), reach, mayDrag);
  const looks = computed(handleLook);
  let draw = make();
  let held: Held | null = null;
  const gesture = new EditGesture(() => {
    const geometry = held && draw.getSnapshotFeature(held.featureId)?.geometry;
    return geometry ? cornersOf(geometry) : null;
  });

  const hold = (alternative: Alignment | undefined) => {
    if (dragging.peek() || !draw.enabled) return;
    held = holdIn(draw, held, alternative);
    if (held && draw.getMode() === "select") draw.selectFeature(held.featureId);
  };
  const begin = () => {
    draw.start();
    draw.on("change", (ids, kind, context) => {
      if (context && "origin" in context && context.origin === "api") return;
      if (held && kind === "update" && ids.includes(held.featureId)) {
        if (context?.target !== "properties") gesture.changed(held.alternativeId);
      } else if (tool.peek() !== "move") drawnCorners.value = countDrawn(draw);
    });
    draw.on("finish", (id, { action }) => {
      if (action === "draw") return finish(draw, id);
      gesture.flush();
      if (action === "insertMidpoint" && gesture.mayGoOn()) return;
      gesture.end();
      endGesture();
      hold(chosen.peek());
    });
    draw.setMode(MODE_OF[tool.peek()]);
    hold(chosen.peek());
  };

  const again = () => {
    if (draw.enabled) draw.stop();
    held = null;
    draw = make();
    begin();
    setDrawLooks(draw, colours.peek(), looks.peek());
  };
  const stop = () => {
    gesture.flush();
    gesture.end();
    endGesture();
    if (draw.enabled) draw.stop();
    held = null;
  };

  effect(() => {
    const act = isDrawable(map).value && !mapIsLent.value ? again : stop;
    untracked(act);
  });
  map.getCanvasContainer().addEventListener(
    "pointerdown",
    ({ pointerType, isPrimary, isTrusted, pointerId, target, offsetX, offsetY }) => {
      if (!isTrusted) return;
      const at = { containerX: offsetX, containerY: offsetY };
      if (pointerType === "touch" && target === canvas && isOnTapped(at)) keepZoom(map);
      if (isPrimary && target === canvas) canvas.setPointerCapture(pointerId);
      const wanted = reachOf(pointerType);
      if (wanted === reach || !draw.enabled || draw.getModeState() === "drawing") return;
      reach = wanted;
      again();
    },
    { capture: true },
  );
  effect(() => {
    const now = colours.value;
    const handles = looks.value;
    if (draw.enabled) setDrawLooks(draw, now, handles);
  });
  effect(() => {
    const mode = MODE_OF[tool.value];
    untracked(() => {
      if (draw.enabled && draw.getMode() !== mode) draw.setMode(mode);
      drawnCorners.value = tool.peek() === "move" ? null : 0;
      hold(chosen.peek());
    });
  });
  effect(() => {
    const alternative = chosen.value;
    untracked(() => hold(alternative));
  });
  canvas.addEventListener("pointerup", () => gesture.released());
  listenForEnter(canvas);
  keepKeyDrawing(map, () => draw.enabled && draw.undo());
  keepCornerPopover(map);
}

/** Corners shrink, and then go, where the line is too small on the map for them. */
function handleLook(): HandleLook {
  const line = chosenLine.value;
  const legPx = line
    ? line.totals.lengthM / Math.max(1, line.cornersM.length) / restingView.value.metresPerPx
    : LARGE_LEG_PX;
  const cornerPx = Math.min(LARGEST_CORNER_PX, legPx / 8);
  return {
    tappedIndex: tappedCorner.value,
    cornerPx: cornerPx < LEAST_CORNER_PX ? 0 : cornerPx,
    hasMidpoints: (isNearLine.value || tappedCorner.value !== null) && !dragging.value,
    hasOutline: !line || dragging.value || sizedLags.value,
  };
}

/** Keeps a tap and a drag that follow each other from being taken for a zoom, until the finger is lifted. */
function keepZoom(map: MapLibreMap): void {
  map.touchZoomRotate.disable();
  const over = new AbortController();
  for (const type of ["pointerup", "pointercancel"]) {
    window.addEventListener(
      type,
      () => {
        over.abort();
        map.touchZoomRotate.enable();
      },
      { signal: over.signal },
    );
  }
}

/** Makes the library hold the chosen alternative as the document has it. */
function holdIn(draw: TerraDraw, held: Held | null, wanted: Alignment | undefined): Held | null {
  const same = held && wanted && held.alternativeId === wanted.id && held.kind === wanted.kind;
  if (same && draw.hasFeature(held.featureId)) {
    const feature = draw.getSnapshotFeature(held.featureId);
    const shown = feature ? cornersOf(feature.geometry) : [];
    if (!sameCorners(shown, wanted.corners)) {
      draw.updateFeatureGeometry(held.featureId, geometryOf(wanted));
    }
    return held;
  }
  if (held && draw.hasFeature(held.featureId)) draw.removeFeatures([held.featureId]);
  if (!wanted) return null;
  const featureId = draw.getFeatureId();
  const [outcome] = draw.addFeatures([
    {
      type: "Feature",
      id: featureId,
      properties: { mode: wanted.kind },
      geometry: geometryOf(wanted),
    },
  ]);
  if (outcome?.valid) return { featureId, alternativeId: wanted.id, kind: wanted.kind };
  const cause = outcome?.reason ?? null;
  tell("error", failureOf("draw/not-editable", { name: wanted.name, cause }));
  return null;
}

function geometryOf({ kind, corners }: Alignment): Polygon | LineString {
  const path = corners.map((corner: LonLat) => [...rounded(corner)]);
  if (kind === "line") return { type: "LineString", coordinates: path };
  return { type: "Polygon", coordinates: [[...path, [...path[0]!]]] };
}

function finish(draw: TerraDraw, id: string | number): void {
  const geometry = draw.getSnapshotFeature(id)?.geometry;
  if (!geometry) return;
  const edit = drawnEdit(tool.peek(), geometry, plan.peek());
  queueMicrotask(() => {
    if (draw.hasFeature(id)) draw.removeFeatures([id]);
    tool.value = "move";
    const outcome = edit.ok ? apply(edit.value) : edit;
    if (!outcome.ok) tell("error", outcome.failure);
  });
}

/** Corners set so far of the shape being drawn. */
function countDrawn(draw: TerraDraw): number {
  const drawn = draw.getSnapshot().find((each) => each.properties.currentlyDrawing === true);
  if (!drawn) return 0;
  const corners = cornersOf(drawn.geometry).length;
  return Number(drawn.properties.committedCoordinateCount ?? Math.max(1, corners - 1));
}

/** Enter ends what the pointer draws, also when the map has not the focus; Escape is the screen's own key. */
function listenForEnter(canvas: HTMLElement): void {
  window.addEventListener("keydown", ({ key, target }) => {
    if (tool.peek() === "move" || (target !== document.body && target !== canvas)) return;
    if (key === "Enter") finishDrawing(canvas);
  });
}
