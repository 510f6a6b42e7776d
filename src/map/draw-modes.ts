import type { Map as MapLibreMap } from "maplibre-gl";
import {
  type GeoJSONStoreFeatures,
  type HexColor,
  TerraDraw,
  TerraDrawLineStringMode,
  TerraDrawModeUndoRedo,
  type TerraDrawMouseEvent,
  TerraDrawPointMode,
  TerraDrawPolygonMode,
  TerraDrawSelectMode,
} from "terra-draw";
import { TerraDrawMapLibreGLAdapter } from "terra-draw-maplibre-gl-adapter";
import type { Tool } from "../live/screen.ts";
import type { MapColours } from "./colours.ts";
import { EDIT_BELOW } from "./layers.ts";

/** Reach of a corner for mouse and finger, CSS pixels. The library's own 40 closes small rings early. */
const MOUSE_REACH_PX = 13;
const FINGER_REACH_PX = 28;
/** What the library ends a shape by: a key that no keyboard has, so that ours alone say what Enter does. */
const KEYS = { finish: "Finish", cancel: null } as const;
/** The library drops one drag event in so many; none may be dropped here. */
const DROP_NO_EVENT = Number.MAX_SAFE_INTEGER;

/** The drawing library's mode for each tool. */
export const MODE_OF: Readonly<Record<Tool, string>> = {
  move: "select",
  "draw-ring": "ring",
  "draw-line": "line",
  "draw-structure": "structure",
  "draw-no-go": "no-go",
  "draw-flow": "flow",
  "place-gauge": "gauge",
  "place-source": "source",
};
const AREAS = ["ring", "structure", "no-go"] as const;
const PLACES = ["gauge", "source"] as const;

/** Corners can be dragged, put in on a leg and taken out; the whole line cannot be shoved by accident. */
const FLAGS = {
  feature: {
    draggable: false,
    selfIntersectable: true,
    coordinates: { draggable: true, deletable: true, midpoints: { draggable: true } },
  },
};

/** How near a pointer of a kind must come to take hold of a corner, CSS pixels. */
export function reachOf(pointerType: string): number {
  return pointerType === "touch" ? FINGER_REACH_PX : MOUSE_REACH_PX;
}

/** Ends the shape being drawn where it stands. */
export function finishDrawing(canvas: HTMLElement): void {
  canvas.dispatchEvent(new KeyboardEvent("keyup", { key: KEYS.finish }));
}

/**
 * A drawing library bound to the map, with its own keys left out.
 * @param mayDrag whether a drag that begins there may move a corner
 */
export function makeDraw(
  map: MapLibreMap,
  colours: MapColours,
  pointerDistance: number,
  mayDrag: (at: TerraDrawMouseEvent) => boolean,
): TerraDraw {
  return new TerraDraw({
    undoRedo: { modeLevel: new TerraDrawModeUndoRedo() },
    adapter: new TerraDrawMapLibreGLAdapter({
      map,
      coordinatePrecision: 9,
      renderBelowLayerId: EDIT_BELOW,
      minPixelDragDistanceSelecting: 3,
    }),
    modes: [
      new TerraDrawSelectMode({
        flags: { ring: FLAGS, line: FLAGS },
        keyEvents: null,
        allowManualDeselection: false,
        allowManualSelection: false,
        dragEventThrottle: DROP_NO_EVENT,
        pointerDistance,
        pointerEvents: {
          ...{ leftClick: true, rightClick: true, contextMenu: false },
          ...{ onDragStart: mayDrag, onDrag: true, onDragEnd: true },
        },
        styles: selectStyles(colours, null),
      }),
      ...AREAS.map(
        (modeName) =>
          new TerraDrawPolygonMode({
            modeName,
            pointerDistance,
            keyEvents: KEYS,
            showCoordinatePoints: modeName !== "ring",
            styles: areaStyles(colours),
          }),
      ),
      new TerraDrawLineStringMode({
        modeName: "line",
        pointerDistance,
        keyEvents: KEYS,
        styles: lineStyles(colours),
      }),
      new TerraDrawLineStringMode({
        modeName: "flow",
        pointerDistance,
        keyEvents: KEYS,
        finishOnNthCoordinate: 2,
        styles: { ...lineStyles(colours), lineStringColor: colours.waterText as HexColor },
      }),
      ...PLACES.map(
        (modeName) =>
          new TerraDrawPointMode({
            modeName,
            styles: { pointColor: colours.waterText as HexColor, pointWidth: 5 },
          }),
      ),
    ],
  });
}

/** Sets the colours after a change of theme or of the corner chosen by a tap, which is drawn larger. */
export function setDrawColours(
  draw: TerraDraw,
  colours: MapColours,
  tappedIndex: number | null,
): void {
  draw.updateModeOptions("select", { styles: selectStyles(colours, tappedIndex) });
  for (const mode of AREAS) draw.updateModeOptions(mode, { styles: areaStyles(colours) });
  draw.updateModeOptions("line", { styles: lineStyles(colours) });
}

function selectStyles(colours: MapColours, tappedIndex: number | null) {
  const ink = colours.ink as HexColor;
  const act = colours.act as HexColor;
  const isTapped = ({ properties }: GeoJSONStoreFeatures) =>
    tappedIndex !== null && properties.index === tappedIndex;
  const panel = colours.panel as HexColor;
  return {
    selectedPolygonColor: ink,
    selectedPolygonFillOpacity: 0,
    selectedPolygonOutlineColor: ink,
    selectedPolygonOutlineWidth: 1.4,
    selectedLineStringColor: ink,
    selectedLineStringWidth: 1.4,
    selectionPointColor: panel,
    selectionPointWidth: (feature: GeoJSONStoreFeatures) => (isTapped(feature) ? 9 : 4.6),
    selectionPointOutlineColor: (feature: GeoJSONStoreFeatures) => (isTapped(feature) ? act : ink),
    selectionPointOutlineWidth: (feature: GeoJSONStoreFeatures) => (isTapped(feature) ? 3 : 1.5),
    midPointColor: panel,
    midPointWidth: 2.4,
    midPointOutlineColor: ink,
    midPointOutlineWidth: 1,
    midPointOpacity: 0.75,
    midPointOutlineOpacity: 0.55,
  };
}

function areaStyles(colours: MapColours) {
  const ink = colours.ink as HexColor;
  const panel = colours.panel as HexColor;
  return {
    fillColor: ink,
    fillOpacity: 0.04,
    outlineColor: ink,
    outlineWidth: 1.4,
    closingPointColor: panel,
    closingPointWidth: 5.5,
    closingPointOutlineColor: colours.act as HexColor,
    closingPointOutlineWidth: 2,
    coordinatePointColor: panel,
    coordinatePointWidth: 3.5,
    coordinatePointOutlineColor: ink,
    coordinatePointOutlineWidth: 1.4,
  };
}

function lineStyles(colours: MapColours) {
  return {
    lineStringColor: colours.ink as HexColor,
    lineStringWidth: 1.4,
    closingPointColor: colours.panel as HexColor,
    closingPointWidth: 5.5,
    closingPointOutlineColor: colours.act as HexColor,
    closingPointOutlineWidth: 2,
  };
}
