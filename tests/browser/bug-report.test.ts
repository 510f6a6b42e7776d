import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { planIsSized } from "../helpers/screen.ts";

let house: House;
let visit: Visit;
beforeAll(async () => {
  house = await openHouse();
  visit = await house.visit({ graphics: false });
  await planIsSized(visit.page);
});
afterAll(async () => {
  await visit.leave();
  await house.close();
});

/** Throws on the page where nobody catches it. */
const goWrong = (message: string) =>
  visit.page.evaluate((text) => {
    setTimeout(() => {
      throw new TypeError(text, { cause: new Error("the first cause") });
    });
  }, message);

describe("an error that nobody catches", () => {
  it("is said once, with a report to copy that has no places in it", async () => {
    const { page } = visit;
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await goWrong("no such corner");
    await goWrong("no such corner");
    const notice = page.locator('.notice[data-code="unexpected"]');
    await notice.getByText("no such corner").waitFor();
    await page.waitForTimeout(100);
    expect(await notice.count()).toBe(1);
    const copied = async () => {
      await notice.getByRole("button", { name: "Copy report" }).click();
      await notice.getByRole("button", { name: "Report copied" }).waitFor();
      return page.evaluate(() => navigator.clipboard.readText());
    };
    const report = await copied();
    expect(report).toMatch(/^Drystead \d+\.\d+\.\d+, commit (not known|[0-9a-f]{7,40}(-dirty)?)\n/);
    expect(report).toContain(`Browser: ${await page.evaluate(() => navigator.userAgent)}`);
    expect(report).toContain("TypeError: no such corner\n    at ");
    expect(report).toContain("Caused by Error: the first cause");
    const title = await page.getByLabel("Title of the plan").inputValue();
    for (const place of [title, '"coordinates"', "demo.tif", house.address]) {
      expect(report).not.toContain(place);
    }
    await notice.getByLabel("Include the plan with its places").check();
    const whole = await copied();
    for (const place of [title, '"coordinates"', "demo.tif"]) expect(whole).toContain(place);
  });

  it("gives its report as text where the page may not copy", async () => {
    const { page } = visit;
    await page.evaluate(() => {
      Object.defineProperty(navigator, "clipboard", { value: undefined });
    });
    await goWrong("no ink");
    const notice = page.locator(".notice", { hasText: "no ink" });
    await notice.getByRole("button", { name: "Copy report" }).click();
    const text = notice.getByLabel("This page may not copy. Select the text and copy it:");
    expect(await text.inputValue()).toContain("TypeError: no ink");
  });
});
