import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { drystead, ROOT } from "../helpers/terminal.ts";

const ROWS = ["03T08", "03T20", "04T08", "04T20", "05T08"].map((hour, k) => ({
  ...{ at: `2026-04-${hour}:00-05:00`, levelM: 101 + 0.35 * k, lowM: null, highM: null },
}));

it("the terminal program prints how a line holds and what time it takes, in SI", async () => {
  const folder = mkdtempSync(join(tmpdir(), "drystead-holding-"));
  const plan = JSON.parse(readFileSync(join(ROOT, "sample-terrain/tilted.geojson"), "utf8"));
  const forecast = { levels: "elevation", rows: ROWS, note: "" };
  plan.drystead.time = { forecast, startAt: ROWS[0]!.at, shifts: 2 };
  writeFileSync(join(folder, "plan.geojson"), JSON.stringify(plan));
  const words = ["size", "plan.geojson", "--terrain", join(ROOT, "sample-terrain/tilted.tif")];
  const { out, said } = await drystead(words, folder);
  rmSync(folder, { recursive: true });
  expect(said).toBe("");
  const [found] = JSON.parse(out).alternatives;
  const { holding, time } = found;
  expect(holding.standing.sliding.factor.low).toEqual(expect.any(Number));
  expect(holding.seepage.throughSheetM3PerS.low).toBeGreaterThan(0);
  expect(holding.seepage.throughSheetM3PerS.low).toBeLessThan(1e-3);
  expect(holding.inside.lowestM).toEqual(expect.any(Number));
  expect(holding.pumping.proposed.working).toBeGreaterThan(1);
  expect(holding).not.toHaveProperty("profile");
  expect(time).not.toHaveProperty("wetH");
  expect(time.startAt).toBe("2026-04-03T08:00-05:00");
  expect(time.stretches[0]).toMatchObject({ fromM: 0, crew: expect.any(Number) });
  expect(time.parts[0].steps[0]).toMatchObject({ number: 1, bags: expect.any(Number) });
  expect([true, false]).toContain(time.inTime);
  expect(time.alternativesInTime).toEqual(expect.any(Array));
  expect(time.curve.nextFoot.bags).toEqual(expect.any(Number));
});
