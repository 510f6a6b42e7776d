import { defineConfig } from "vitest/config";
import { noticesPlugin } from "./tests/tools/notices.mjs";
import { servedPolicy } from "./tests/tools/served-policy.ts";

export default defineConfig({
  base: "./",
  plugins: [noticesPlugin(), servedPolicy()],
  worker: { format: "es" },
  build: { target: "es2022", assetsInlineLimit: 0, chunkSizeWarningLimit: 2000 },
  preview: { host: "localhost" },
  server: { host: "localhost" },
  test: {
    allowOnly: false,
    maxWorkers: "100%",
    projects: [
      {
        test: {
          name: "unit",
          include: ["tests/unit/**/*.test.ts"],
          environment: "node",
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "reference",
          include: ["tests/reference/**/*.test.ts"],
          environment: "node",
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          environment: "node",
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
