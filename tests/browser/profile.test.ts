import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { buildStretch, json, open, openBlock, planIsSized, samplePlan } from "../helpers/screen.ts";

/* One visit: what the crew leader and the trainer read off the line drawn along its length. */
let page: Page;
oneVisit({ graphics: false }, (arrived) => {
  page = arrived;
});

const room = () => page.locator(".profile-room");
const lane = (kind: string) => room().locator(`.profile-lane-${kind}`);
const cells = (kind: string) => lane(kind).locator(".lane-cell");
const said = () => room().locator(".profile-said").textContent();
const saysThat = (words: RegExp) => expect.poll(said, { timeout: 15_000 }).toMatch(words);
const tab = (name: string) => room().getByRole("tab", { name, exact: true });
const mark = (kind: string) => room().locator(`[data-mark="${kind}"]`);

describe("the lanes above the profile", () => {
  it("show the checks first, one thing at a time", async () => {
    expect(await tab("Checks").getAttribute("aria-selected")).toBe("true");
    await room().getByText("1 Must fix, 4 cautions").waitFor();
    expect(await lane("work").count()).toBe(0);
    expect(await room().locator(".line-mark").count()).toBe(0);
  });

  it("show the build sequence inside the room, and its hours", async () => {
    await tab("Build sequence").click();
    await cells("work").first().waitFor();
    expect(await room().locator(".profile-mark").count()).toBe(0);
    const names = await cells("work").locator("text").allTextContents();
    expect(names.join(" ")).toMatch(/^W\d W\d E\d+/);
    const titles = await cells("work").locator("title").allTextContents();
    expect(titles[0]).toMatch(
      /^Steps W\d, W\d: 0\+00 to .* bags, from \w{3} \d\d:\d\d to \w{3} \d\d:\d\d\./,
    );
    expect(titles.filter((title) => title.startsWith("On HOLD"))).toHaveLength(1);
    const [inner, outer] = [await lane("work").boundingBox(), await room().boundingBox()];
    expect(inner!.y + inner!.height).toBeLessThanOrEqual(outer!.y + outer!.height);
    await saysThat(/\d+ stretches of work: .*behind the water/);
  });

  it("shows what is finished at the moment looked at, and the water by then", async () => {
    await openBlock(page, "gauge-and-forecast");
    const slider = page.getByRole("slider", { name: "Through the forecast" });
    await slider.focus();
    for (let step = 0; step < 18; step++) await page.keyboard.press("ArrowLeft");
    await saysThat(/Water drawn for Wed 13:00: stage 30\.\d ft; \d+ of \d+ stretches are finished/);
    const finished = Number(/; (\d+) of/.exec((await said())!)![1]);
    expect(finished).toBeGreaterThan(0);
    expect(await room().locator('.lane-cell[data-done="true"]').count()).toBe(finished);
    expect(await room().locator(".profile-moment").getAttribute("d")).toMatch(/^M/);
    await page.keyboard.press("Escape");
    await expect.poll(() => room().locator("[data-done]").count()).toBe(0);
  });

  it("never use the red of the height limit for what is late", async () => {
    const fills = await cells("work").evaluateAll((all) =>
      all.map((cell) => getComputedStyle(cell.querySelector(".lane-fill")!).fill),
    );
    expect(new Set(fills).size).toBeGreaterThan(1);
    const over = await page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement("i"));
      probe.style.color = "var(--over)";
      const { color } = getComputedStyle(probe);
      probe.remove();
      return color;
    });
    expect(fills).not.toContain(over);
    await room().getByText("overtopped before done").waitFor();
  });

  it("are gone through by arrow keys, and the choice is remembered", async () => {
    const kept = () => page.evaluate(() => localStorage.getItem("drystead.profile.lane"));
    expect(await kept()).toBe("work");
    await tab("Build sequence").press("ArrowRight");
    expect(await tab("Move sideways").getAttribute("aria-selected")).toBe("true");
    await room().locator(".sideways-water, .sideways-land").first().waitFor({ state: "attached" });
    await tab("Move sideways").press("ArrowRight");
    expect(await tab("Checks").getAttribute("aria-selected")).toBe("true");
    expect(await room().locator(".sideways").count()).toBe(0);
    expect(await kept()).toBe("checks");
  });
});

describe("marks on the line", () => {
  beforeAll(async () => {
    await page.evaluate(() => localStorage.setItem("drystead.map.show", "weakest water"));
    await page.reload();
    await planIsSized(page);
  });

  it("number where a rising river goes over first, as the worksheet lists it", async () => {
    await openBlock(page, "gauge-and-forecast", "reach");
    const list = page.getByRole("region", { name: "If the river rises on" });
    const first = list.getByRole("button", { name: /^Mark station/ }).first();
    expect(await list.textContent()).toMatch(
      /above stage 32\.0 ft over the top of levee, worst at/,
    );
    const station = (await first.textContent())!;
    await saysThat(new RegExp(`overtops first at ${station.replace("+", "\\+")}[,.]`));
    expect(await mark("over").first().locator("title").textContent()).toContain("above stage 32.0");
    await first.click();
    const slider = page.getByRole("slider", { name: "Marked station" });
    expect(await slider.getAttribute("aria-valuetext")).toMatch(
      new RegExp(`^station ${station[0]}\\+${station[2]}\\d, .*(on HOLD, not built|[EW]\\d+)`),
    );
  });

  it("show where it is weakest, quietly while it holds", async () => {
    await saysThat(/Sliding calculates at [\d.]+ to [\d.]+, 1\.5 is required: as required/);
    expect(await room().locator(".line-mark-weakest.line-mark-quiet").count()).toBeGreaterThan(0);
  });

  it("say so where it slides, on a friction that is too low", async () => {
    const plan = samplePlan("demo.geojson");
    Object.assign(plan.drystead.holding, { frictionLow: 0.1, frictionHigh: 0.12 });
    await open(page, json("slippery.geojson", plan));
    await saysThat(/1\.5 is required: below it, on [\d,]+ ft of line/);
    expect(await room().locator(".line-mark-weakest.line-mark-grave").count()).toBe(1);
    expect(await room().locator(".profile-label-mark-grave").textContent()).toMatch(/^sliding/);
    await page.keyboard.press("Control+z");
    await saysThat(/: as required/);
  });

  it("name what each reach is built as once one is not the pyramid", async () => {
    expect(await lane("sections").count()).toBe(0);
    await openBlock(page, "line", "reaches");
    await buildStretch(page, "5+00", "7+00", "two-bag-wall");
    await expect.poll(() => cells("sections").count()).toBe(3);
    const wall = cells("sections").nth(1);
    expect(await wall.locator("title").textContent()).toMatch(
      /^Reach 2, 5\+00 to 7\+00: .*two bags wide, limit 1\.0 ft, over it on \d+ ft\./,
    );
    expect(await wall.locator("text").textContent()).toMatch(/^2\b/);
    await expect
      .poll(() => room().locator(".profile-label-limit").allTextContents())
      .toContain("Height limit 1.0 ft");
    await page.keyboard.press("Control+z");
    await expect.poll(() => lane("sections").count()).toBe(0);
  });

  it("name the way in where water comes round the end of a line", async () => {
    const plan = samplePlan("demo.geojson");
    const line = plan.features.find(
      ({ properties }: { properties: { name: string } }) => properties.name === "Tied to road bank",
    );
    const [end, next] = line.geometry.coordinates;
    line.geometry.coordinates[0] = [0, 1].map((k) => end[k] + 0.9 * (next[k] - end[k]));
    plan.drystead.chosenId = line.id;
    await open(page, json("off-the-bank.geojson", plan));
    await mark("way-in").waitFor();
    await saysThat(/The water comes in around the end at 0\+00, over ground at 87[34]\.\d\d ft\./);
    expect(await room().locator(".profile-label-mark-grave").first().textContent()).toMatch(
      /^(The water comes in|Water in at)/,
    );
  });
});
