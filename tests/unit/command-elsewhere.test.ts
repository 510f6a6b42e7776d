import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

describe("a plan of one place on the elevation data of another", () => {
  it.each(["size", "site", "trace"])(
    "%s says how far they are apart and prints no figure",
    (verb) => {
      const tsx = fileURLToPath(import.meta.resolve("tsx"));
      const files = [
        "sample-terrain/demo.geojson",
        "--terrain",
        "tests/fixtures/rasters/u8-deflate.tif",
      ];
      const words = ["--import", tsx, "workers/command.ts", verb, ...files];
      const done = spawnSync(process.execPath, words, { cwd: ROOT, encoding: "utf8" });
      expect(done.stdout).toBe("");
      expect(done.stderr).toMatch(/elevation data lies \d+ mi \(\d+ km\) \w+ of the plan/);
      expect(done.stderr).toContain("Open the elevation data of the plan's place");
      expect(done.status).toBe(1);
    },
  );
});
