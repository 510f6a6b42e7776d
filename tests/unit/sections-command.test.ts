import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { drystead, ROOT } from "../helpers/terminal.ts";

/** What `size` says of the tilted sample plan, its only line built as stated. */
async function sizedWith(reachSections: unknown) {
  const folder = mkdtempSync(join(tmpdir(), "drystead-sections-"));
  const plan = JSON.parse(readFileSync(join(ROOT, "sample-terrain/tilted.geojson"), "utf8"));
  for (const { properties } of plan.features) {
    if (properties.role === "alignment") {
      Object.assign(properties, { reachBreaksM: [30], reachSections });
    }
  }
  writeFileSync(join(folder, "plan.geojson"), JSON.stringify(plan));
  const words = ["size", "plan.geojson", "--terrain", join(ROOT, "sample-terrain/tilted.tif")];
  const ended = await drystead(words, folder);
  rmSync(folder, { recursive: true });
  return ended;
}

it("the terminal program prints what each reach is built as and takes", async () => {
  const { out, said } = await sizedWith([{ section: "plywood-box" }, { section: "pyramid" }]);
  expect(said).toBe("");
  const [{ reaches, totals, checks }] = JSON.parse(out).alternatives;
  expect(reaches[0]).toMatchObject({
    ...{ fromM: 0, toM: 30, section: "plywood-box", sectionName: "Plywood box filled with sand" },
    limitM: 1.2192,
  });
  expect(reaches[1]).toMatchObject({ section: "pyramid", totals: { materials: { stakes: 0 } } });
  expect(reaches[0].totals.bags).toBe(0);
  expect(totals.materials.plywoodSheets).toBeGreaterThan(0);
  expect(totals.materials).toEqual(reaches[0].totals.materials);
  expect(checks.map((check: { id: string }) => check.id)).toContain("types-meet");
});

it("the terminal program refuses a section it does not know, and names those it does", async () => {
  const { code, out, said } = await sizedWith([{ section: "moat" }]);
  expect(code).not.toBe(0);
  expect(out).toBe("");
  expect(said).toMatch(/pyramid, braced-wall, plywood-box.*"moat"/);
});
