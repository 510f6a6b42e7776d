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

it("says what is wrong with elevation data though the network is gone", async () => {
  const { page } = visit;
  const isFetched = () =>
    page.evaluate(() =>
      performance.getEntriesByType("resource").some(({ name }) => /\/late-[\w-]+\.js$/.test(name)),
    );
  await expect.poll(isFetched, { timeout: 10_000 }).toBe(true);
  await page.context().setOffline(true);
  const buffer = Buffer.concat([Buffer.from("II*\0\x08\0\0\0", "latin1"), Buffer.alloc(40)]);
  const damaged = { name: "damaged.tif", mimeType: "image/tiff", buffer };
  await page.getByLabel("Elevation data of your own").first().setInputFiles(damaged);
  await page.getByText("it is damaged: its size is 0 x 0 cells").waitFor({ timeout: 10_000 });
});
