import { afterAll, beforeAll, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { openPages, planIsSized } from "../helpers/screen.ts";

/* Parts that are fetched when they are first needed. */

let house: House;
let visit: Visit;
beforeAll(async () => {
  house = await openHouse();
  visit = await house.visit({ graphics: false });
});
afterAll(async () => {
  await visit.leave();
  await house.close();
});

it("says that the printed pages could not be fetched, and fetches them at the next try", async () => {
  const { page } = visit;
  await page.route(/pages-room-.*\.js/, (route) => route.abort());
  await planIsSized(page);
  await openPages(page);
  await page.getByText("A part of the program could not be loaded: the printed pages.").waitFor();
  await page.getByRole("button", { name: "Back to the map" }).click();
  await openPages(page);
  await page.getByText("A part of the program could not be loaded").waitFor();
  await page.unroute(/pages-room-.*\.js/);
  await page.getByRole("button", { name: "Try again" }).click();
  await page.locator("table").first().waitFor();
});

it("fetches the search when a ring is first asked for", async () => {
  const fetched = async () => {
    const [quick, ...others] = visit.page.workers();
    const all = await Promise.all(
      [quick, ...others].map((worker) =>
        worker?.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name)),
      ),
    );
    return all.flat().some((name) => /\/search-[\w-]{8}\.js$/.test(name ?? ""));
  };
  await visit.leave();
  visit = await house.visit({ graphics: false });
  await planIsSized(visit.page);
  expect(await fetched()).toBe(false);
  await visit.page.getByRole("button", { name: "Find a line" }).click();
  await visit.page
    .getByRole("button", { name: /^Find the ring/ })
    .first()
    .click();
  await expect.poll(fetched, { timeout: 20_000 }).toBe(true);
});
