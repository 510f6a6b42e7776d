import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Frame, Page, Worker } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { ChoiceQuestion } from "../../shared/buildings/choice-types.ts";
import { lineOf, NO_LIMIT } from "../helpers/choice-cases.ts";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { type RangeServer, rangeServer } from "../helpers/range-server.ts";
import { inMore, json, open, openBlock, openPages, planIsSized } from "../helpers/screen.ts";

/*
 * What may leave the page: nothing, until a person names a host, and then that host alone. The proxy writes down
 * whatever gets out.
 */

const OTHER = "http://other.example/picture.png";
/** A plan whose texts are markup that runs a script and asks a host if it is ever taken for markup; made for this test. */
const HOSTILE = fileURLToPath(new URL("../fixtures/plans/hostile.geojson", import.meta.url));

let house: House;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  visit = await house.visit({ coarse: true });
  page = visit.page;
  await planIsSized(page);
});
afterAll(async () => {
  await house?.close();
});

/** What becomes of a request from there: "sent", or the name of the refusal. */
function ask(from: Page | Frame | Worker, address: string): Promise<string> {
  const asking = `fetch(${JSON.stringify(address)}).then(() => "sent", ({ name }) => name)`;
  return (from as Worker).evaluate(asking) as Promise<string>;
}

/** Most milliseconds in which an engine's worker says that it is there. */
const PONG_MS = 3000;

/** What an engine's worker answers to a question; null in a worker of another kind, which knows no ping. */
function choiceIn(worker: Worker, question: ChoiceQuestion): Promise<unknown> {
  const ask = ({ asked, pongMs }: { asked: ChoiceQuestion; pongMs: number }) => {
    type Answer = { readonly kind: string; readonly id?: number };
    const scope = globalThis as unknown as { postMessage: (answer: Answer) => void };
    const post = scope.postMessage.bind(scope);
    const hear = (data: object) => dispatchEvent(new MessageEvent("message", { data }));
    return new Promise((resolve) => {
      const silent = setTimeout(() => resolve(null), pongMs);
      scope.postMessage = (answer) => {
        if (answer.kind === "pong") {
          clearTimeout(silent);
          hear({ kind: "call", id: -1, verb: "chooseLines", request: { question: asked } });
        }
        if (answer.id === -1 && answer.kind !== "progress") resolve(answer);
        else post(answer);
      };
      hear({ kind: "ping" });
    });
  };
  return worker.evaluate(ask, { asked: question, pongMs: PONG_MS });
}

const askedHosts = () => [...new Set(house.strayRequests.map((url) => new URL(url).host))];

describe("the pages as served", () => {
  const policyOf = async (path: string) =>
    (await fetch(new URL(path, house.address))).headers.get("content-security-policy");

  it("may be framed by nobody, and name no other host", async () => {
    const policy = await policyOf("");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).toContain("connect-src 'self' data: blob:;");
    expect(policy).toContain("img-src 'self' data: blob:;");
    expect(policy).not.toMatch(/https?:|wss?:/);
  });

  it("let our own page alone frame the base map's frame", async () => {
    expect(await policyOf("base-map-frame.html")).toContain("frame-ancestors 'self'");
  });
});

describe("with no host named", () => {
  it("neither the page nor any worker can ask another host", async () => {
    expect(page.workers().length).toBeGreaterThanOrEqual(3);
    for (const from of [page, ...page.workers()]) expect(await ask(from, OTHER)).toBe("TypeError");
    const picture = await page.evaluate(async (address) => {
      const image = new Image();
      image.src = address;
      return image.decode().then(
        () => "shown",
        () => "refused",
      );
    }, OTHER);
    expect(picture).toBe("refused");
    expect(house.strayRequests).toEqual([]);
  });

  it("a worker solves the choice of buildings under it, with the program's own files alone", async () => {
    const question = {
      candidates: ["a", "b"].map((id, i) => lineOf(id, { bags: 4 + i })),
      stock: { ...NO_LIMIT, bags: 6 },
      workForce: null,
    };
    const answers = await Promise.all(page.workers().map((worker) => choiceIn(worker, question)));
    expect(answers.filter((each) => each !== null)).toMatchObject([
      { kind: "done", response: { chosen: ["a"], isProved: true, runsOutFirst: "bags" } },
      { kind: "done", response: { chosen: ["a"], isProved: true, runsOutFirst: "bags" } },
    ]);
    expect(house.strayRequests).toEqual([]);
  });

  it("a hostile plan runs nothing and asks nobody, on any sheet", async () => {
    let dialogs = 0;
    page.on("dialog", (dialog) => {
      dialogs += 1;
      void dialog.dismiss();
    });
    await open(page, [HOSTILE]);
    const title = page.getByLabel("Title of the plan");
    await expect.poll(() => title.inputValue(), { timeout: 20_000 }).toContain("<script>");
    await planIsSized(page);
    await openPages(page);
    await page.locator("table").first().waitFor();
    expect(readFileSync(HOSTILE, "utf8")).toContain("window.__x=1");
    expect(await page.evaluate(() => "__x" in window)).toBe(false);
    expect(await page.locator('img[src*="evil"], script:not([src])').count()).toBe(0);
    expect(dialogs).toBe(0);
    expect(house.strayRequests).toEqual([]);
    await page.reload();
    await planIsSized(page);
    expect(await page.evaluate(() => "__x" in window)).toBe(false);
    expect(house.strayRequests).toEqual([]);
  });
});

describe("with one host named", () => {
  it("the base map asks that host, and nothing asks another", async () => {
    await (await inMore(page, /^Base map/)).click();
    const address = page.getByLabel("Tile address");
    await address.fill("http://*/{z}/{x}/{y}.png");
    await address.press("Enter");
    await page.getByText("Expected a web address of map tiles").waitFor();
    await address.fill("http://tiles.example/{z}/{x}/{y}.png");
    await address.press("Enter");
    expect(house.strayRequests).toEqual([]);
    await page.getByLabel("Show it under the relief").check();
    await expect.poll(askedHosts, { timeout: 20_000 }).toEqual(["tiles.example"]);
    expect(house.strayRequests[0]).toMatch(/^http:\/\/tiles\.example\/\d+\/\d+\/\d+\.png$/);
    for (const from of [...page.frames(), ...page.workers()]) {
      expect(await ask(from, OTHER)).toBe("TypeError");
    }
    expect(page.frames().length).toBe(2);
    await ask(page.frames()[1]!, "http://tiles.example/more");
    expect(house.strayRequests).toContain("http://tiles.example/more");
    await page.getByLabel("Show it under the relief").uncheck();
    await expect.poll(() => page.frames().length, { timeout: 20_000 }).toBe(1);
    expect(askedHosts()).toEqual(["tiles.example"]);
  });
});

describe("with an address of elevation data", () => {
  const DEMO = fileURLToPath(new URL("../../sample-terrain/demo.tif", import.meta.url));
  const PLAN = fileURLToPath(new URL("../../sample-terrain/demo.geojson", import.meta.url));
  let server: RangeServer;
  beforeAll(async () => {
    server = await rangeServer(new Uint8Array(readFileSync(DEMO)), "dem.tif");
    await page.reload();
    await planIsSized(page);
    await openBlock(page, "ground");
  });
  afterAll(() => server.close());
  const address = () => page.getByLabel("Or a web address of a cloud-optimized GeoTIFF");
  const press = () => page.getByRole("button", { name: "Open address" }).click();
  const why = () => page.locator(".address-field [role=alert]").textContent();

  it("asks nobody before Open is pressed, and says why a server cannot be read from", async () => {
    await address().fill(server.at("whole"));
    await page
      .getByText(/Open reads the parts that are needed from localhost:\d+, and from no other host/)
      .waitFor();
    expect(server.asked).toEqual([]);
    await press();
    await expect.poll(why, { timeout: 20_000 }).toContain("sends only the whole");
    await address().fill(server.at("no-cors"));
    await press();
    await expect.poll(why, { timeout: 20_000 }).toContain("(CORS)");
  });

  it("reads parts of it from that host alone, and keeps the address with the plan", async () => {
    await address().fill(server.at("well"));
    await press();
    const facts = page.locator('[data-block="ground"] .facts');
    await expect.poll(() => facts.textContent(), { timeout: 60_000 }).toContain("dem.tif");
    expect(server.bytesSent()).toBeGreaterThan(100_000);
    for (const from of [...page.frames(), ...page.workers()]) {
      expect(await ask(from, OTHER)).toBe("TypeError");
    }
    expect(page.frames().length).toBe(2);
  });

  it("of a plan asks first, and nothing is asked there until it is opened", async () => {
    await open(page, [DEMO]);
    await expect.poll(() => page.frames().length, { timeout: 20_000 }).toBe(1);
    const plan = JSON.parse(readFileSync(PLAN, "utf8"));
    plan.drystead.terrain = [{ name: "dem.tif", bytes: 1_212_810, address: server.at("well") }];
    server.asked.length = 0;
    await open(page, json("at.geojson", plan));
    const asks = page.locator('[data-code="address/ask"]');
    await asks.waitFor();
    expect(await asks.textContent()).toContain("Nothing is read from there until you open it.");
    expect(server.asked).toEqual([]);
    await asks.getByRole("button", { name: /^Open it from localhost/ }).click();
    await expect.poll(() => server.asked.length, { timeout: 20_000 }).toBeGreaterThan(0);
    expect(askedHosts()).toEqual(["tiles.example"]);
  });
});
