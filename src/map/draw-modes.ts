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
import { KEYS } from "./draw-input.ts";
import { EDIT_BELOW } from "./layers.ts";

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
  "draw-culvert": "culvert",
  "place-drain": "drain",
  "draw-road": "road",
  "place-pile": "pile",
  "place-pumps": "pumps",
  "draw-truck-way": "truck-way",
};
const AREAS = ["ring", "structure", "no-go"] as const;
const PLACES = ["gauge", "source", "drain", "pile", "pumps"] as const;
const PATHS = ["line", "road", "truck-way"] as const;
/** Ended by the second place. */
const PAIRS = ["flow", "culvert"] as const;

/** Corners can be dragged, put in on a leg and taken out; the whole line cannot be shoved by accident. */
const FLAGS = {
  feature: {
    draggable: false,
    selfIntersectable: true,
    coordinates: { draggable: true, deletable: true, midpoints: { draggable: true } },
  },
};

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
        styles: selectStyles(colours, AT_FIRST),
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
      ...PATHS.map(
        (modeName) =>
          new TerraDrawLineStringMode({
            modeName,
            pointerDistance,
            keyEvents: KEYS,
            styles: lineStyles(colours),
          }),
      ),
      ...PAIRS.map(
        (modeName) =>
          new TerraDrawLineStringMode({
            modeName,
            pointerDistance,
            keyEvents: KEYS,
            finishOnNthCoordinate: 2,
            styles: { ...lineStyles(colours), lineStringColor: colours.waterText as HexColor },
          }),
      ),
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

/** How the chosen line is drawn for editing. */
export interface HandleLook {
  /** The corner chosen by a tap, which is drawn larger; null for none. */
  readonly tappedIndex: number | null;
  /** Radius of a corner, CSS pixels. */
  readonly cornerPx: number;
  /** Whether the places are drawn where a corner can be put in. */
  readonly hasMidpoints: boolean;
  /** Whether the line through the corners is drawn: not over a levee that shows it. */
  readonly hasOutline: boolean;
}

const AT_FIRST: HandleLook = {
  ...{ tappedIndex: null, cornerPx: 4.6, hasMidpoints: false, hasOutline: true },
};

/** Sets the looks after a change of theme, of the corner chosen by a tap or of what the pointer is near. */
export function setDrawLooks(draw: TerraDraw, colours: MapColours, handles: HandleLook): void {
  draw.updateModeOptions("select", { styles: selectStyles(colours, handles) });
  for (const mode of AREAS) draw.updateModeOptions(mode, { styles: areaStyles(colours) });
  for (const mode of PATHS) draw.updateModeOptions(mode, { styles: lineStyles(colours) });
}

function selectStyles(
  colours: MapColours,
  { tappedIndex, cornerPx, hasMidpoints, hasOutline }: HandleLook,
) {
  const ink = colours.ink as HexColor;
  const act = colours.act as HexColor;
  const isTapped = ({ properties }: GeoJSONStoreFeatures) =>
    tappedIndex !== null && properties.index === tappedIndex;
  const panel = colours.panel as HexColor;
  return {
    selectedPolygonColor: ink,
    selectedPolygonFillOpacity: 0,
    selectedPolygonOutlineColor: ink,
    selectedPolygonOutlineWidth: hasOutline ? 1.4 : 0,
    selectedLineStringColor: ink,
    selectedLineStringWidth: hasOutline ? 1.4 : 0,
    selectionPointColor: panel,
    selectionPointWidth: (feature: GeoJSONStoreFeatures) => (isTapped(feature) ? 9 : cornerPx),
    selectionPointOutlineColor: (feature: GeoJSONStoreFeatures) => (isTapped(feature) ? act : ink),
    selectionPointOutlineWidth: (feature: GeoJSONStoreFeatures) =>
      isTapped(feature) ? 3 : cornerPx > 0 ? 1.5 : 0,
    midPointColor: panel,
    midPointWidth: hasMidpoints ? 3.2 : 0,
    midPointOutlineColor: ink,
    midPointOutlineWidth: hasMidpoints ? 1 : 0,
    midPointOpacity: 0.9,
    midPointOutlineOpacity: 0.8,
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
