import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { overThePond } from "../helpers/over-the-pond.ts";
import {
  bags,
  bagsOf,
  bagsWhen,
  checkInFull,
  chosen,
  json,
  open,
  openPages,
  sample,
  samplePlan,
} from "../helpers/screen.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

let page: Page;
oneVisit({ graphics: false }, (arrived) => {
  page = arrived;
});

describe("files that are refused leave the plan as it is", () => {
  const refused = async (file: Parameters<typeof open>[1], code: RegExp) => {
    const before = await bags(page);
    await open(page, file);
    const alert = page.locator(".notice-error").first();
    await alert.waitFor();
    expect(await alert.getAttribute("data-code")).toMatch(code);
    expect((await alert.textContent())?.length).toBeGreaterThan(40);
    expect(await bags(page)).toBe(before);
    expect(await page.locator(".alternative").count()).toBe(3);
    await page.getByRole("button", { name: "Dismiss this message" }).first().click();
    await alert.waitFor({ state: "detached" });
  };

  it("a raster cut off, a text named .tif, a damaged and a newer plan", async () => {
    const whole = readFileSync(sample("demo.tif"));
    const mimeType = "image/tiff";
    await refused(
      { name: "cut.tif", mimeType, buffer: whole.subarray(0, 20_000) },
      /^(raster|ground)\//,
    );
    await refused(
      { name: "letter.tif", mimeType, buffer: Buffer.from("Dear county") },
      /^(raster|ground)\//,
    );
    const text = readFileSync(sample("demo.geojson"));
    const plan = { name: "cut.geojson", mimeType: "application/geo+json" };
    await refused({ ...plan, buffer: text.subarray(0, text.length / 2) }, /^plan\//);
    const newer = { ...samplePlan("demo.geojson"), drystead: { version: 99 } };
    await refused(json("newer.geojson", newer), /^plan\/newer-version$/);
  });
});

/** The file that the menu of the printed pages gives. */
async function savedAs(label: string) {
  await page.getByRole("button", { name: "Save as a file" }).click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: label }).click(),
  ]);
  return download;
}

describe("taking files away", () => {
  it("stakes as CSV: a row for each station on the page, with the figures of the page", async () => {
    await openPages(page);
    const download = await savedAs("Stakes, CSV");
    expect(download.suggestedFilename()).toMatch(/\.csv$/);
    const [head, ...all] = csvCells(readFileSync(await download.path(), "utf8"));
    const rows = all.filter(([row]) => row === "Stake");
    expect(all[0]![0]).toBe("Must fix");
    const table = await page
      .locator('[data-table="stations"] tbody tr')
      .evaluateAll((lines) =>
        lines.map((line) => [...line.querySelectorAll("td")].map((cell) => cell.textContent ?? "")),
      );
    expect(rows.length).toBeGreaterThan(30);
    expect(table.map((cells) => cells[0]!.split(" ")[0])).toEqual(
      rows.map((cells) => cells[head!.indexOf("station")]),
    );
    expect(table.filter(([station]) => station!.endsWith("OVER"))).toHaveLength(5);
    for (const name of ["ground_ft", "top_of_levee_ft", "height_ft", "half_width_landside_ft"]) {
      const column = head!.indexOf(name);
      expect(column).toBeGreaterThan(0);
      rows.forEach((cells, n) => {
        expect(table[n]).toContain(cells[column]);
      });
    }
    await page.getByRole("button", { name: "Back to the plan" }).click();
  });

  it.each([
    ["Drawing for CAD, DXF", /\.dxf$/, /\$INSUNITS\s+70\s+6\s/],
    ["Line and stakes, KML", /\.kml$/, /<kml xmlns="http:\/\/www\.opengis\.net\/kml\/2\.2">/],
    ["Stakes for a GPS receiver, GPX", /\.gpx$/, /<gpx version="1\.1"/],
  ])("a line as %s, its writer fetched when it is chosen", async (label, name, holds) => {
    await openPages(page);
    const download = await savedAs(label);
    expect(download.suggestedFilename()).toMatch(name);
    expect(readFileSync(await download.path(), "utf8")).toMatch(holds);
    await page.getByRole("button", { name: "Back to the plan" }).click();
  });

  it("the plan as GeoJSON that opens again as the same plan", async () => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.keyboard.press("Control+s"),
    ]);
    const saved = JSON.parse(readFileSync(await download.path(), "utf8"));
    expect(saved.type).toBe("FeatureCollection");
    expect(saved.features).toEqual(samplePlan("demo.geojson").features);
    expect(saved.drystead.water).toEqual(samplePlan("demo.geojson").drystead.water);
  });
});

describe("opening files", () => {
  it("a line over a hole in the data is flagged, on its card and in the checks", async () => {
    await open(page, overThePond());
    await chosen(page).getByText("have no elevation data").waitFor();
    const check = await checkInFull(page, "no-ground");
    expect(await check.getAttribute("data-severity")).toBe("stop");
  });

  it("a raster and its plan: the screen shows the bags that the terminal program counts", async () => {
    await open(page, [sample("tilted.tif"), sample("tilted.geojson")]);
    await page.locator(".alternative").nth(2).waitFor({ state: "detached" });
    await bagsWhen(page, (now) => now > 40_000);
    const out = execFileSync(
      process.execPath,
      [
        ...["--import", "tsx", "workers/command.ts", "size"],
        ...["sample-terrain/tilted.geojson", "--terrain", "sample-terrain/tilted.tif"],
      ],
      { cwd: ROOT, encoding: "utf8" },
    );
    const { alternatives } = JSON.parse(out);
    for (const n of [0, 1]) {
      expect(await bagsOf(page.locator(".alternative").nth(n))).toBe(alternatives[n].totals.bags);
    }
  });
});

/** Cells of a CSV without line breaks inside cells. */
function csvCells(text: string): string[][] {
  return text
    .trimEnd()
    .split("\r\n")
    .map((row) =>
      [...row.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
        ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? "",
      ),
    );
}
