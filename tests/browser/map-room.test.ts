import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { SECTIONS } from "../../shared/sections.ts";
import { firstView } from "../helpers/first-view.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import { overThePond } from "../helpers/over-the-pond.ts";
import {
  bagsWhen,
  buildStretch,
  corners,
  exampleIsTaken,
  inMore,
  open,
  openBlock,
  showMarks,
  startDrag,
} from "../helpers/screen.ts";

/* One visit: the demo as it opens, what stands on its map, and the edge under it. */
let page: Page;
oneVisit({ width: 1440, height: 900, theme: "light" }, (arrived) => {
  page = arrived;
  return exampleIsTaken(page);
});

const note = () => page.locator(".edit-note");
const marks = () => page.locator(".map-check, .water-mark");

describe("the first view of the demo at 1440 x 900", () => {
  it("has at most 320 words and figures and 40 controls", async () => {
    const { words, controls } = await firstView(page);
    expect(words).toContain("17,879");
    expect(words).toContain("4+00");
    expect(words).toContain("Barn");
    expect(words.length, `${words.length}: ${words.slice(-60).join(" ")}`).toBeLessThanOrEqual(320);
    expect(controls).toContain("Find a line");
    expect(controls.length, `${controls.length}: ${controls.join(", ")}`).toBeLessThanOrEqual(40);
  });

  it("says what to fix, the bags, the hours and when people leave", async () => {
    const { words } = await firstView(page);
    const said = words.join(" ");
    for (const part of [
      "Must fix",
      "Too high at 4+09 to 4+38: 4.4 ft, height limit 4.0 ft",
      "Leave at stage",
      "Not a permit.",
      "17,879 bags",
      "elapsed",
      "All checks",
    ]) {
      expect(said).toContain(part);
    }
  });
});

describe("the map at first", () => {
  it("marks one station alone, red because it is over the limit", async () => {
    expect(await marks().count()).toBe(0);
    expect(await page.locator(".mark-label").textContent()).toBe("4+18: 4.4 ft");
    expect(await page.locator(".mark-label").getAttribute("data-over")).toBe("true");
    const box = page.getByRole("group", { name: "Show" });
    expect(await box.getByRole("checkbox", { checked: true }).count()).toBe(0);
  });

  it("shows the marks that are switched on, each with what it says, and remembers them", async () => {
    await showMarks(page, "Checks");
    await expect.poll(() => marks().count()).toBeGreaterThan(2);
    for (const mark of await marks().all()) {
      expect(await mark.getAttribute("data-says")).toMatch(/^(Must fix|Caution|Note): \S/);
    }
    const legend = page.getByRole("region", { name: "Legend" });
    expect(await legend.textContent()).toContain("Must fix");
    const kept = () => page.evaluate(() => localStorage.getItem("drystead.map.show"));
    expect(await kept()).toBe("checks");
    await page.getByRole("checkbox", { name: "Checks", exact: true }).uncheck();
    expect(await marks().count()).toBe(0);
    expect(await kept()).toBe("");
  });
});

describe("what is wrong with a line", () => {
  const legend = () => page.getByRole("region", { name: "Legend" });
  const weakest = (than: "meets" | "below") =>
    page.locator(`.water-mark[data-kind="weakest-${than}-required"]`);

  it("is said by the marks of the weakest places, as the profile says it", async () => {
    await showMarks(page, "Weakest places");
    await weakest("meets").first().click({ force: true });
    await expect
      .poll(() => page.locator(".profile-said").textContent())
      .toMatch(/Survey the ground at \d+\+\d\d first: over the height limit \d in 10/);
    const popover = page.getByRole("group", { name: "Lowest factor: as required" });
    expect(await popover.textContent()).toMatch(/1\.5 is required: as required/);
    await page.keyboard.press("Escape");
    expect(await weakest("below").count()).toBe(0);
  });

  it("is marked where it slides, and in the legend where it has no elevation data", async () => {
    expect(await legend().textContent()).not.toContain("no elevation data");
    await open(page, overThePond({ frictionLow: 0.1, frictionHigh: 0.12 }));
    await expect.poll(() => weakest("below").count()).toBe(1);
    await page.getByRole("button", { name: "Fit" }).click();
    await legend().getByText("no elevation data").waitFor();
    await page.getByRole("checkbox", { name: "Weakest places", exact: true }).uncheck();
    await page.keyboard.press("Control+z");
    await bagsWhen(page, (bags) => bags === 17_879);
  });
});

describe("the legend", () => {
  const legend = () => page.getByRole("region", { name: "Legend" });

  it("names what a stretch is built of, and the moment of the forecast looked at", async () => {
    const boxed = SECTIONS.find(({ fill }) => fill === "sand")!;
    await openBlock(page, "line", "reaches");
    await buildStretch(page, "1+00", "2+50", boxed.id);
    await legend().getByText(boxed.name).waitFor();
    await page.keyboard.press("Control+z");
    await legend().getByText(boxed.name).waitFor({ state: "detached" });

    const day = /(Mon|Tue|Wed|Thu|Fri|Sat|Sun) Apr \d+/;
    expect(await legend().textContent()).not.toMatch(day);
    await openBlock(page, "gauge-and-forecast");
    await page.getByRole("slider", { name: "Through the forecast" }).press("ArrowLeft");
    await expect.poll(() => legend().textContent()).toMatch(day);
    await page.keyboard.press("Escape");
    await expect.poll(() => legend().textContent()).not.toMatch(day);
  });
});

describe("after an edit", () => {
  it("the map says what was done, with the way back, and nothing after a change of view", async () => {
    expect(await note().textContent()).toBe("");
    await page.keyboard.press("]");
    await page.keyboard.press("[");
    expect(await note().textContent()).toBe("");
    const before = await bagsWhen(page, (bags) => bags === 17_879);
    const [corner] = await corners(page);
    await startDrag(page, corner!, { x: corner!.x - 25, y: corner!.y + 10 });
    await page.mouse.up();
    await note().getByText("Corner 1 moved.").waitFor();
    await note().getByRole("button", { name: "Undo" }).click();
    await bagsWhen(page, (bags) => bags === before);
    expect(await note().textContent()).toBe("");
  });
});

describe("the edge between map and profile", () => {
  it("moves by arrow keys, is kept, and goes back", async () => {
    const edge = page.getByRole("separator", { name: "Edge between map and profile" });
    const heightPx = async () => (await page.locator(".profile-place").boundingBox())!.height;
    const first = await heightPx();
    await edge.focus();
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    await expect.poll(heightPx).toBeGreaterThan(first + 20);
    expect(
      Number(await page.evaluate(() => localStorage.getItem("drystead.layout.profile"))),
    ).toBeGreaterThan(0.3);
    await page.keyboard.press("Home");
    await expect.poll(heightPx).toBe(first);
  });

  it("leaves the plot at least 180 pixels at first", async () => {
    const plot = (await page.locator(".profile-room .profile-axis").boundingBox())!;
    expect(plot.height).toBeGreaterThanOrEqual(180);
  });
});

describe("lent to the view of all buildings", () => {
  it("shows a picked building of the plan with its note, and comes back", async () => {
    await (await inMore(page, "All buildings")).click();
    const row = page.locator(".county-table [data-id]").first();
    await row.focus();
    await page.keyboard.press("Enter");
    await page.locator(".county-map .county-callout").waitFor();
    expect(await page.locator(".county-map .map-canvas canvas").count()).toBe(1);
    await page.getByRole("button", { name: "One building" }).click();
    await page.locator(".map-room .map-canvas canvas").waitFor();
  });
});
