import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { bagsWhen, corners, inMore, showMarks, startDrag } from "../helpers/screen.ts";

/* One visit: what stands on the map, and the edge under it. */
let page: Page;
oneVisit({ width: 1440, height: 900 }, (arrived) => {
  page = arrived;
});

const note = () => page.locator(".edit-note");
const marks = () => page.locator(".map-check, .water-mark");

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
