import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import project from "./package.json" with { type: "json" };
import { browserSolver } from "./tests/tools/browser-solver.ts";
import { commitOf } from "./tests/tools/commit.mjs";
import { LongestFirst } from "./tests/tools/longest-first.ts";
import { maplibreSources } from "./tests/tools/maplibre-sources.ts";
import { noticesPlugin } from "./tests/tools/notices.mjs";
import { offline } from "./tests/tools/offline.ts";
import { projectionMethods } from "./tests/tools/projection-methods.ts";
import { servedPolicy } from "./tests/tools/served-policy.ts";
import { workerChunks } from "./tests/tools/worker-chunks.ts";

const ROOT = fileURLToPath(new URL("./", import.meta.url));

export default defineConfig({
  base: "./",
  define: { BUILT_FROM: { version: project.version, commit: commitOf(ROOT) } },
  plugins: [
    noticesPlugin(),
    servedPolicy(),
    workerChunks(),
    maplibreSources(),
    projectionMethods(),
    browserSolver(),
    offline(),
  ],
  worker: { format: "es" },
  // bundled for development it would look for its WebAssembly beside the bundle
  optimizeDeps: { exclude: ["highs"] },
  build: {
    target: "es2022",
    assetsInlineLimit: 0,
    sourcemap: true,
    chunkSizeWarningLimit: 2500,
    // a worker has no document to put preloads in
    modulePreload: {
      resolveDependencies: (_, files, { hostType }) => (hostType === "html" ? files : []),
    },
  },
  preview: { host: "localhost" },
  server: { host: "localhost" },
  test: {
    allowOnly: false,
    maxWorkers: "100%",
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: "unit",
          include: ["tests/unit/**/*.test.ts"],
          environment: "node",
          testTimeout: 60_000,
          // Modules are read once a worker, which halves the time: a test of the document starts from a plan of its own.
          isolate: false,
          setupFiles: ["tests/helpers/fresh-page.ts"],
        },
      },
      {
        test: {
          name: "reference",
          include: ["tests/reference/**/*.test.ts"],
          environment: "node",
          testTimeout: 60_000,
          isolate: false,
        },
      },
      {
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          environment: "node",
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // What a page shows in the end is waited for as long as a busy machine may take.
          expect: { poll: { timeout: 20_000 } },
          // A map drawn without a graphics card can stall a page for seconds; a second try is printed as one.
          retry: 1,
          // Two browsers: one alone leaves half a processor of two idle, and more than two stall one another.
          maxWorkers: 2,
          isolate: false,
        },
      },
    ],
  },
});
