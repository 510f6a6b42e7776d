import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { type PlainServer, plainServer } from "../helpers/plain-server.ts";
import { inMore, openPages, planIsSized } from "../helpers/screen.ts";

/* One visit to the built program on a plain file server whose network goes away, and which then has a new version. */

let house: House;
let server: PlainServer;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  house = await openHouse();
  server = await plainServer("/county/flood%20plans/drystead/");
  visit = await house.visit({ address: server.address, offline: true });
  page = visit.page;
  await planIsSized(page);
});
afterAll(async () => {
  await server?.stop();
  await house?.close();
});

/** Addresses of all that is kept, from the folder of the page, by store. */
const stores = () =>
  page.evaluate(async () => {
    const names = await caches.keys();
    return Promise.all(
      names.map(async (name) => {
        const requests = await (await caches.open(name)).keys();
        return requests.map(({ url }) => url.slice(document.baseURI.length));
      }),
    );
  });

/** Opens a menu of the pages' bar, and chooses from it. */
async function inSheets(menu: string, item: string): Promise<void> {
  const bar = page.locator(".sheets-bar");
  await bar.getByRole("button", { name: menu, exact: true }).click();
  await bar.getByRole("button", { name: item, exact: true }).click();
}

it("starts without a network, pages and all, from any folder of any file server", async () => {
  const isReady = () =>
    page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.active?.state);
  await expect.poll(isReady, { timeout: 60_000 }).toBe("activated");
  await inMore(page, "Keys");
  await page.getByText("Starts without a network: yes").waitFor();
  await server.stop();
  await page.reload();
  await page.getByText("17,879").first().waitFor();
  await planIsSized(page);
  await openPages(page);
  await page.locator("table").first().waitFor();
  expect(visit.troubles).toEqual([]);
});

it("makes a picture of the map with its Must fix band, and copies the stakes for a spreadsheet", async () => {
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    inSheets("Save as a file", "Picture of the map, PNG"),
  ]);
  expect(download.suggestedFilename()).toMatch(/-map\.png$/);
  const picture = readFileSync(await download.path()).toString("base64");
  const found = await page.evaluate(async (bytes) => {
    const image = new Image();
    image.src = `data:image/png;base64,${bytes}`;
    await image.decode();
    const brush = document.createElement("canvas").getContext("2d")!;
    brush.canvas.width = image.width;
    brush.canvas.height = image.height;
    brush.drawImage(image, 0, 0);
    const { data } = brush.getImageData(0, 0, 1, image.height);
    const red = Array.from({ length: image.height }, (_, y) => [...data.slice(4 * y, 4 * y + 3)]);
    return { width: image.width, band: red.filter((rgb) => `${rgb}` === "176,18,63").length };
  }, picture);
  expect(found.width).toBeGreaterThanOrEqual(1200);
  expect(found.band).toBeGreaterThan(30);

  await inSheets("Save as a file", "Stakes, copied for a spreadsheet");
  await page.getByText("Stakes copied.").waitFor();
  const text = await page.evaluate(() => navigator.clipboard.readText());
  const rows = text.split(/\r?\n/).flatMap((row) => (row === "" ? [] : [row.split("\t")]));
  expect(rows[0]).toContain("top_of_levee_ft");
  expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  expect(rows.filter(([kind]) => kind === "Stake").length).toBeGreaterThan(10);
});

it("keeps the program's own files alone", async () => {
  const [files, ...others] = await stores();
  expect(others).toEqual([]);
  expect(files).toContain("index.html");
  expect(files!.filter((name) => /^assets\/terrain\.worker-/.test(name))).toHaveLength(1);
  const own = /^(assets\/[\w.-]+\.(js|css|woff2|tif|wasm)|[\w-]+\.(html|md|svg|png|webmanifest))$/;
  expect(files!.filter((name) => !own.test(name))).toEqual([]);
});

it("loads a new version when the person says so and not before, the plan kept, old parts still at hand", async () => {
  const [before] = await stores();
  const part = before!.find((name) => name.startsWith("assets/pages-room-"))!;
  server.change = (name, bytes) => {
    if (name === part) return null;
    if (name === "index.html") return `${bytes}<p hidden id="second"></p>`;
    if (name !== "service-worker.js") return bytes;
    const listed = String(bytes).replace(/"revision":"\w+","url":"index.html"/, (entry) =>
      entry.replace(/"revision":"\w+"/, '"revision":"second"'),
    );
    return listed.replace(new RegExp(`\\{"revision":null,"url":"${part}"\\},?`), "");
  };
  await server.start();
  await page.getByRole("button", { name: "Back to the plan" }).click();
  await page.evaluate(async () => {
    Object.assign(globalThis, { isOldPage: true });
    await (await navigator.serviceWorker.getRegistration())?.update();
  });
  const notice = page.locator('[data-code="program/new-version"]');
  await notice.waitFor();
  const title = page.getByLabel("Title of the plan");
  await title.fill("Edited meanwhile");
  await title.press("Enter");
  await page.locator('html[data-stored="yes"]').waitFor({ state: "attached" });
  expect(await page.evaluate(() => "isOldPage" in globalThis)).toBe(true);
  expect(await page.locator("#second").count()).toBe(0);

  await notice.getByRole("button", { name: "Load it now" }).click();
  await page.locator("#second").waitFor({ state: "attached" });
  await expect.poll(() => title.inputValue(), { timeout: 60_000 }).toBe("Edited meanwhile");
  expect((await stores()).map((files) => files.includes(part))).toEqual([true, false]);
  const old = await page.evaluate(async (name) => (await fetch(name)).status, part);
  expect(old).toBe(200);
  expect(visit.troubles).toEqual([]);
});
