import { describe, expect, it } from "vitest";
import { drystead } from "../helpers/terminal.ts";

describe("a plan of one place on the elevation data of another", () => {
  it.each(["size", "site", "trace"])(
    "%s says how far they are apart and prints no figure",
    async (verb) => {
      const files = [
        "sample-terrain/demo.geojson",
        "--terrain",
        "tests/fixtures/rasters/u8-deflate.tif",
      ];
      const { code, out, said } = await drystead([verb, ...files]);
      expect(out).toBe("");
      expect(said).toMatch(/elevation data lies \d+ mi \w+ of the plan/);
      expect(said).toContain("Open the elevation data of the plan's place");
      expect(code).toBe(1);
    },
  );
});
