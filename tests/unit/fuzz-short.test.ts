import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

/* The short part of `npm run fuzz`; each input is tried in a process of its own kind, so that an abort is seen. */

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

it("takes or refuses 96 damaged rasters, plans and forecasts, and never anything else", () => {
  const words = ["--import", "tsx", "tests/fuzz/fuzz.ts", "--inputs", "96", "--seed", "7"];
  const { stdout, status } = spawnSync(process.execPath, words, { cwd: ROOT, encoding: "utf8" });
  expect(stdout).toContain("96 inputs of seed 7: 0 went wrong");
  expect(stdout).toMatch(/raster taken/);
  expect(stdout).toMatch(/raster refused raster\/damaged/);
  expect(status).toBe(0);
}, 120_000);
