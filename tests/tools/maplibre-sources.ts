import { fileURLToPath } from "node:url";
import { type Plugin, transformWithOxc } from "vite";
import { chunkOf } from "./worker-chunks.ts";

const SOURCES = fileURLToPath(new URL("../../node_modules/maplibre-gl/src/", import.meta.url));

const NOTHING =
  "export class Missing { constructor() { throw new Error('Left out at the build.'); } }";
const left = (...names: readonly string[]) =>
  [NOTHING, ...names.map((name) => `export { Missing as ${name} };`)].join("\n");
const undone = (...names: readonly string[]) =>
  names.map((name) => `export const ${name} = () => {};`).join("\n");

/** The maps are flat ones in Mercator's projection: nothing of the globe is needed. */
const FLAT = `
  import { MercatorProjection } from "./mercator_projection.ts";
  import { createMercatorTransform } from "./mercator_transform.ts";
  import { MercatorCameraHelper } from "./mercator_camera_helper.ts";
  export const createProjectionFromName = (name, constrainOverride) => ({
    projection: new MercatorProjection(),
    transform: createMercatorTransform({ constrainOverride }),
    cameraHelper: new MercatorCameraHelper(),
  });
`;

/** The styles are our own; `npm run dev`, with MapLibre as it is built, says what is wrong with one. */
const UNCHECKED = `
  const none = () => [];
  export const validateStyle = Object.assign(none, {
    source: none, sprite: none, glyphs: none, layer: none, light: none, sky: none, terrain: none,
    filter: none, paintProperty: none, layoutProperty: none,
  });
  export const SPEC_SOURCE_TYPES = new Set(["vector", "raster", "raster-dem", "geojson", "image"]);
  export const validateStyleAndEmit = () => false;
  export const emitValidationErrors = () => false;
  export const validateAndEmit = () => false;
`;

/** What stands for the parts of MapLibre that no map of ours uses, by their files. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  "source/vector_tile_mlt": left("MLTVectorTile"),
  "source/video_source": left("VideoSource"),
  "geo/projection/projection_factory": FLAT,
  "render/terrain": left("Terrain"),
  "webgl/render_to_texture": left("RenderToTexture"),
  "webgl/draw/draw_terrain": undone("drawDepth", "drawTerrain", "drawTerrainHeightMap"),
  "webgl/draw/draw_sky": undone("drawSky", "drawAtmosphere"),
  "webgl/draw/draw_heatmap": undone("drawHeatmap"),
  "webgl/draw/draw_fill_extrusion": undone("drawFillExtrusion"),
  "style/style_layer/heatmap_style_layer": `${left("HeatmapStyleLayer")}
    export const isHeatmapStyleLayer = () => false;`,
  "style/style_layer/fill_extrusion_style_layer": `${left("FillExtrusionStyleLayer")}
    export const isFillExtrusionStyleLayer = () => false;`,
  "style/validate_style": UNCHECKED,
  "ui/hash": left("Hash"),
  "ui/control/logo_control": left("LogoControl"),
  "ui/control/attribution_control": `${left("AttributionControl")}
    export const defaultAttributionControlOptions = {};`,
};

/**
 * Builds MapLibre and its worker from the sources in its package, so that what both need is one file that is fetched
 * once, without what no map here uses; its built files each hold all of it. Fields without a value are left out, as its own build does: a field that
 * a base class's constructor has set would be emptied otherwise.
 */
export function maplibreSources(): Plugin {
  return {
    name: "drystead-maplibre-sources",
    apply: "build",
    enforce: "pre",
    resolveId: {
      filter: {
        id: /^maplibre-gl($|\/dist\/maplibre-gl-worker\.mjs\?worker&url$)/,
      },
      handler: (source) =>
        source === "maplibre-gl" ? `${SOURCES}index.ts` : chunkOf(`${SOURCES}source/worker.ts`),
    },
    load: {
      filter: { id: /\/maplibre-gl\/src\/.*\.ts$/ },
      handler: (id) => LEFT_OUT[id.slice(SOURCES.length, -".ts".length)],
    },
    transform: {
      filter: { id: /\/maplibre-gl\/src\/.*\.ts$/ },
      handler: (code, id) =>
        transformWithOxc(code, id, {
          target: "es2022",
          typescript: { removeClassFieldsWithoutInitializer: true },
          assumptions: { setPublicClassFields: true },
        }),
    },
  };
}
