import type { FeatureCollection, Position } from "geojson";
import type {
  LayerSpecification,
  Map as MapLibreMap,
  RasterDEMTileSource,
  RasterTileSource,
} from "maplibre-gl";
import { drawnOutline } from "../../shared/drawn-outline.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import { faded, type MapColours } from "./colours.ts";
import { groundRamp, waterRamp } from "./ramps.ts";
import { install, NOTHING, show } from "./sources.ts";
import { SCHEMES, tileAddress } from "./tile-address.ts";
import type { WaterTint } from "./water-level.ts";

/** Relief tiles carry heights times this: a quarter of a millimetre a step instead of 4 mm. */
const RELIEF_SCALE = 16;
const TERRARIUM = { red: 256, green: 1, blue: 1 / 256, shift: 32768 };
/** Steepness that the shading of the whole raster is stretched to, and the most it is stretched. */
const SHADED_STEEPNESS = 0.13;
const MOST_STRETCH = 12;
const UNDER_OPACITY = 0.62;
const OVER_OPACITY = 0.2;
/** Ground resolution of a 256-pixel mercator tile of zoom 0 on the equator, metres a pixel. */
const WORLD_PIXEL_M = 40075016.686 / 256;

/** Relief and base map go under the one layer, water and holes under the other. */
export const RELIEF_BELOW = "contour-lines";
const WATER_BELOW = "outside";

/** A little of the shading lies over the water, so that ground kept free of it, which is painted over it, has relief too. */
export const SHADE = "ground-shade";
const UNDER_SHADE = "ground-shade-under";
const GROUND_LAYERS = ["ground-tone", UNDER_SHADE, "water", SHADE, "holes"] as const;
const GROUND_SOURCES = ["relief", "water", "holes"] as const;

/** What the ground's pictures depend on besides the colours. */
export interface GroundShown {
  readonly summary: GroundSummary;
  /** Counts openings of the ground. */
  readonly turn: number;
  readonly water: WaterTint;
  /** A base map lies under the ground: the ground's own tone is left out. */
  readonly onBaseMap: boolean;
}

/** Range of heights over the shorter side of the raster. */
export function steepness(summary: GroundSummary): number {
  const sideM = Math.min(summary.columns * summary.cellXM, summary.rows * summary.cellYM);
  return Math.max(1e-4, (summary.highestM - summary.lowestM) / Math.max(1, sideM));
}

/** How many times heights are stretched for the shading, so that a flat valley has relief too; 1 to 12. */
function shadingStretch(summary: GroundSummary): number {
  return Math.min(MOST_STRETCH, Math.max(1, SHADED_STEEPNESS / steepness(summary)));
}

/** Paper, contours and the edge of the raster; relief and water come with the ground. See {@link install}. */
export function installGroundFrame(map: MapLibreMap, colours: MapColours): void {
  const layers: LayerSpecification[] = [
    { id: "paper", type: "background", paint: { "background-color": colours.paper } },
    {
      id: "contour-lines",
      type: "line",
      source: "contours",
      layout: { "line-join": "round" },
      paint: {
        "line-color": colours.contour,
        "line-width": ["case", ["get", "index"], 1.3, 0.7],
        "line-opacity": ["case", ["get", "index"], 0.9, 0.7],
      },
    },
    {
      id: "outside",
      type: "fill",
      source: "outside",
      filter: ["==", ["geometry-type"], "Polygon"],
      paint: { "fill-color": colours.paper },
    },
    {
      id: "outside-edge",
      type: "line",
      source: "outside",
      filter: ["==", ["geometry-type"], "LineString"],
      paint: { "line-color": colours.secondary, "line-width": 1, "line-opacity": 0.5 },
    },
  ];
  install(map, ["contours", "outside"], layers);
}

/** Takes the ground's layers off the map. */
export function removeGround(map: MapLibreMap): void {
  for (const id of GROUND_LAYERS) if (map.getLayer(id)) map.removeLayer(id);
  for (const id of GROUND_SOURCES) if (map.getSource(id)) map.removeSource(id);
  show(map, "outside", NOTHING);
}

/** Puts relief, water tint and holes of a newly opened ground on the map in place of what was there. */
export function installGround(map: MapLibreMap, ground: GroundShown, colours: MapColours): void {
  removeGround(map);
  const { summary, onBaseMap } = ground;
  const stretch = shadingStretch(summary);
  const frame = { tileSize: 256, bounds: [...summary.bounds] as [number, number, number, number] };
  const maxzoom = deepestZoom(summary);
  const factor = stretch / RELIEF_SCALE;
  map.addSource("relief", {
    type: "raster-dem",
    ...frame,
    maxzoom,
    tiles: [addressOf("relief", ground)],
    encoding: "custom",
    redFactor: TERRARIUM.red * factor,
    greenFactor: TERRARIUM.green * factor,
    blueFactor: TERRARIUM.blue * factor,
    baseShift: TERRARIUM.shift * factor,
  });
  map.addLayer(
    {
      id: "ground-tone",
      type: "color-relief",
      source: "relief",
      paint: {
        "color-relief-color": toneOf(summary, colours),
        "color-relief-opacity": onBaseMap ? 0 : 1,
      },
    },
    RELIEF_BELOW,
  );
  addShade(map, UNDER_SHADE, UNDER_OPACITY, colours);
  addWater(map, ground, colours);
  addShade(map, SHADE, OVER_OPACITY, colours);
  if (summary.holeShare > 0 || summary.fromOverview) {
    map.addSource("holes", {
      type: "raster",
      ...frame,
      maxzoom: 22,
      tiles: [addressOf("holes", ground)],
    });
    map.addLayer(
      {
        id: "holes",
        type: "raster",
        source: "holes",
        paint: { "raster-fade-duration": 0, "raster-opacity": 0.75 },
      },
      WATER_BELOW,
    );
  }
  show(map, "outside", outsideOf(summary));
}

/** Address template under which a source of the ground asks for its tiles. */
function addressOf(
  source: (typeof GROUND_SOURCES)[number],
  { summary, turn, water }: GroundShown,
): string {
  if (source === "holes") return tileAddress(SCHEMES.holes, turn);
  if (source === "water") return tileAddress(SCHEMES.water, turn, { fall: water.fall });
  const relief = { baseM: Math.floor(summary.lowestM), scale: RELIEF_SCALE };
  return tileAddress(SCHEMES.relief, turn, { relief });
}

/** Asks for the ground's tiles anew under the new turn; what is on the map stays until they come. */
export function askGroundAgain(map: MapLibreMap, ground: GroundShown): void {
  for (const name of GROUND_SOURCES) {
    const source = map.getSource<RasterTileSource | RasterDEMTileSource>(name);
    source?.setTiles([addressOf(name, ground)]);
  }
}

/**
 * Lays the water's tint anew after its plane was tilted another way. The source is made again: tiles that are
 * only loaded anew keep a rim of their neighbours' heights above the old plane, and show it as a dry seam.
 */
export function tiltWater(map: MapLibreMap, ground: GroundShown, colours: MapColours): void {
  if (!map.getLayer("water")) return;
  map.removeLayer("water");
  map.removeSource("water");
  addWater(map, ground, colours);
}

function addShade(map: MapLibreMap, id: string, opacity: number, colours: MapColours): void {
  map.addLayer(
    {
      id,
      type: "hillshade",
      source: "relief",
      paint: {
        "hillshade-method": "igor",
        "hillshade-exaggeration": 0.5,
        "hillshade-illumination-direction": 315,
        "hillshade-illumination-anchor": "map",
        "hillshade-shadow-color": faded(colours.shadow, opacity),
        "hillshade-highlight-color": faded(colours.sunlit, opacity / UNDER_OPACITY),
      },
    },
    WATER_BELOW,
  );
}

function addWater(map: MapLibreMap, ground: GroundShown, colours: MapColours): void {
  const { summary, water } = ground;
  map.addSource("water", {
    type: "raster-dem",
    tileSize: 256,
    bounds: [...summary.bounds] as [number, number, number, number],
    maxzoom: deepestZoom(summary),
    tiles: [addressOf("water", ground)],
    encoding: "terrarium",
  });
  map.addLayer(
    {
      id: "water",
      type: "color-relief",
      source: "water",
      paint: { "color-relief-color": rampOf(summary, water, colours) },
    },
    map.getLayer(SHADE) ? SHADE : WATER_BELOW,
  );
}

/** Moves the water on the map: a paint property, so that it follows a stage being dragged. */
export function setWater(
  map: MapLibreMap,
  summary: GroundSummary,
  water: WaterTint,
  colours: MapColours,
): void {
  if (!map.getLayer("water")) return;
  map.setPaintProperty("water", "color-relief-color", rampOf(summary, water, colours));
}

/** Missing ground starts well above the highest ground and the rise of the water plane across the raster. */
function rampOf(summary: GroundSummary, { levelM, fall }: WaterTint, colours: MapColours) {
  const acrossM = summary.columns * summary.cellXM + summary.rows * summary.cellYM;
  const aboveGroundM = summary.highestM + 50 + (fall?.fallPerM ?? 0) * acrossM;
  return waterRamp(levelM, aboveGroundM, colours);
}

/** Sets the colours of the ground that is on the map, after a change of theme. */
export function paintGround(map: MapLibreMap, summary: GroundSummary, colours: MapColours): void {
  if (!map.getLayer("ground-tone")) return;
  map.setPaintProperty("ground-tone", "color-relief-color", toneOf(summary, colours));
  for (const [id, opacity] of [
    [UNDER_SHADE, UNDER_OPACITY],
    [SHADE, OVER_OPACITY],
  ] as const) {
    map.setPaintProperty(id, "hillshade-shadow-color", faded(colours.shadow, opacity));
    const light = faded(colours.sunlit, opacity / UNDER_OPACITY);
    map.setPaintProperty(id, "hillshade-highlight-color", light);
  }
}

function toneOf(summary: GroundSummary, colours: MapColours) {
  const rangeM = summary.highestM - Math.floor(summary.lowestM);
  return groundRamp(rangeM * shadingStretch(summary), colours);
}

/** Zoom at which a pixel of a display tile is no larger than a cell. */
function deepestZoom(summary: GroundSummary): number {
  const latitude = (summary.bounds[1] + summary.bounds[3]) / 2;
  const pixelM = WORLD_PIXEL_M * Math.cos((latitude * Math.PI) / 180);
  const zoom = Math.ceil(Math.log2(pixelM / Math.min(summary.cellXM, summary.cellYM)));
  return Math.min(22, Math.max(0, zoom));
}

/** Everything outside the raster as an area, and the raster's edge as a line. */
function outsideOf(summary: GroundSummary): FeatureCollection {
  const outline = drawnOutline(summary);
  const edge = [...outline, outline[0]!].map((at): Position => [at[0], at[1]]);
  const world: Position[] = [
    [-180, -85],
    [180, -85],
    [180, 85],
    [-180, 85],
    [-180, -85],
  ];
  return {
    type: "FeatureCollection",
    features: [
      {
        type: "Feature",
        properties: {},
        geometry: { type: "Polygon", coordinates: [world, edge] },
      },
      { type: "Feature", properties: {}, geometry: { type: "LineString", coordinates: edge } },
    ],
  };
}
