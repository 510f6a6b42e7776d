import { fileURLToPath } from "node:url";
import { type Plugin, transformWithOxc } from "vite";
import { chunkOf } from "./worker-chunks.ts";

const SOURCES = fileURLToPath(new URL("../../node_modules/maplibre-gl/src/", import.meta.url));

/** Stands for the reader of one more kind of vector tiles: no source of ours has any. */
const NO_TILES = "\0no-vector-tiles";

/**
 * Builds MapLibre and its worker from the sources in its package, so that what both need is one file that is fetched
 * once; its built files each hold all of it. Fields without a value are left out, as its own build does: a field that
 * a base class's constructor has set would be emptied otherwise.
 */
export function maplibreSources(): Plugin {
  return {
    name: "drystead-maplibre-sources",
    apply: "build",
    enforce: "pre",
    resolveId: {
      filter: {
        id: /^maplibre-gl($|\/dist\/maplibre-gl-worker\.mjs\?worker&url$)|\/vector_tile_mlt\.ts$/,
      },
      handler(source) {
        if (source.endsWith("/vector_tile_mlt.ts")) return NO_TILES;
        return source === "maplibre-gl"
          ? `${SOURCES}index.ts`
          : chunkOf(`${SOURCES}source/worker.ts`);
      },
    },
    load: {
      filter: { id: /^\0no-vector-tiles$/ },
      handler: () =>
        'export class MLTVectorTile { constructor() { throw new Error("Expected no MapLibre tiles."); } }',
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
