import type { BrowserContext, Page } from "playwright-core";
import { expect, it } from "vitest";
import { seriousViolations } from "../helpers/axe.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import { inMore, mapIsIdle, samplePlan } from "../helpers/screen.ts";

let page: Page;
let context: BrowserContext;
oneVisit({ width: 390, height: 844, theme: "light" }, async (arrived) => {
  page = arrived;
  context = page.context();
});

/** The first corners of line A in the demo, where the person walks. */
const [FIRST, SECOND] = samplePlan("demo.geojson").features.find(
  ({ properties }: { properties: { role: string } }) => properties.role === "alignment",
).geometry.coordinates[0] as [number, number][];

/** A share of the way along the first leg. */
async function standAt(share: number, accuracy: number): Promise<void> {
  const [longitude, latitude] = [0, 1].map(
    (k) => FIRST![k]! + (SECOND![k]! - FIRST![k]!) * share,
  ) as [number, number];
  await context.setGeolocation({ longitude, latitude, accuracy });
}

const station = () => page.locator(".crew-station").first();
const tab = (name: string) => page.locator(".crew-tabs").getByRole("button", { name });
const place = () => page.getByRole("region", { name: "Where you are" });

it("opens from the bar of a phone, with when people leave on top and the line only to be read", async () => {
  await page.getByRole("button", { name: "Field", exact: true }).click();
  await station().waitFor();
  expect(await page.locator(".crew-leave-band").textContent()).toMatch(/^Leave at stage 30\.0 ft/);
  expect(await station().textContent()).toBe("0+00");
  expect(await page.locator(".shell").getAttribute("inert")).not.toBeNull();
});

it("says plainly that location is not allowed, and goes on by hand", async () => {
  await page.getByRole("button", { name: "Use GPS" }).click();
  await place().getByText("may not use the phone's location").waitFor();
  await page.getByRole("button", { name: "Stake 0+25" }).click();
  expect(await station().textContent()).toBe("0+25");
});

it("follows a person who walks past three stakes, and stays where a fix is poor", async () => {
  await context.grantPermissions(["geolocation"]);
  await standAt(0, 4);
  await page.getByRole("button", { name: "Use GPS" }).click();
  const passed: string[] = [];
  for (const [share, next] of [
    [0.19, "0+50"],
    [0.28, "0+75"],
    [0.38, "1+00"],
  ] as const) {
    await standAt(share, 4);
    await station().getByText(next).waitFor();
    passed.push(next);
  }
  expect(passed).toHaveLength(3);
  expect(await place().getByRole("status").textContent()).toMatch(/^GPS is within 1[34] ft/);
  await standAt(0.9, 60);
  await place().getByText("cannot tell one stake from the next").waitFor();
  expect(await station().textContent()).toBe("1+00");
});

it("marks a stretch by one press, and asks who cleared a Must fix before it marks that", async () => {
  await page.getByRole("button", { name: "Done", exact: true }).click();
  await page.getByRole("button", { name: "Up to height", exact: true }).waitFor();
  for (let k = 0; k < 60 && (await station().textContent()) !== "4+25"; k++) {
    await page.locator(".crew-keys .crew-key").last().click();
  }
  await page.getByRole("region", { name: "Must fix: do not build here yet" }).waitFor();
  await page.getByRole("button", { name: "Done", exact: true }).click();
  const upToHeight = page.getByRole("button", { name: "Up to height" });
  expect(await upToHeight.isDisabled()).toBe(true);
  await page.getByLabel("Who cleared the Must fix?").fill("J. Ortiz, engineer");
  await upToHeight.click();
  await page.getByRole("button", { name: /^Built so far/ }).click();
  await page.getByText("Must fix cleared by J. Ortiz, engineer").waitFor();
});

it("keeps a photo scaled down and tells its size; what is no photo is refused and the mark stays", async () => {
  await page
    .getByRole("button", { name: /^0\+|^1\+00 to 1\+25/ })
    .first()
    .click();
  await page.getByRole("button", { name: /^1\+00 to 1\+25/ }).click();
  const input = page.getByLabel("Photo of this stretch");
  const text = { name: "note.txt", mimeType: "text/plain", buffer: Buffer.from("no photo") };
  await input.setInputFiles(text);
  await page.getByRole("alert").getByText("cannot be opened here").waitFor();
  const buffer = await page.screenshot();
  await input.setInputFiles({ name: "toe.png", mimeType: "image/png", buffer });
  await page.getByText(/^\d+ kB on this device, not in the plan file$/).waitFor();
  await page.getByRole("button", { name: "Back" }).click();
});

it("shows its codes, and keeps the axe rules and large targets in every view", async () => {
  expect(await seriousViolations(page, [".crew-room"])).toEqual([]);
  await page.getByRole("button", { name: /^Built so far/ }).click();
  await expect.poll(focused, { timeout: 5000 }).toBe("Built so far");
  expect(await seriousViolations(page, [".crew-room"])).toEqual([]);
  await page.getByRole("button", { name: "Show codes" }).click();
  await page.locator(".crew-code").waitFor();
  for (const [width, height] of [
    [390, 844],
    [844, 390],
    [320, 640],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const name of ["Map", "Section", "Watch", "Leave", "Build"]) {
      await tab(name).click();
      if (name === "Map") await mapIsIdle(page);
      const found = width < height ? await seriousViolations(page, [".crew-room"]) : [];
      expect(found, name).toEqual([]);
      const small = await page.evaluate(smallTargets);
      expect(small, `${name} ${width}`).toEqual([]);
    }
  }
  await page.setViewportSize({ width: 390, height: 844 });
  await tab("Build").click();
  await station().waitFor();
});

it("goes to planning only when unlocked, with the map given back and the marks in the plan", async () => {
  await page.getByRole("button", { name: /^View only/ }).click();
  await page.getByRole("button", { name: "Unlock and go to planning" }).click();
  await page.locator(".map-room .map-canvas").waitFor();
  expect(await (await inMore(page, /^Undo: 1\+00 to 1\+25/)).isVisible()).toBe(true);
});

/** The name of what the keyboard is at, where it goes on after the button that was pressed is gone. */
function focused(): Promise<string | null> {
  return page.evaluate(() => document.activeElement!.getAttribute("aria-label"));
}

/** Buttons that are smaller than a gloved finger needs or reach beyond the edge, and type below 14 px. */
function smallTargets(): string[] {
  const room = document.querySelector(".crew-room")!;
  const buttons = [...room.querySelectorAll<HTMLElement>("button")].filter((button) => {
    const { width, height, left, right } = button.getBoundingClientRect();
    const isBeyond = left < 0 || right > window.innerWidth;
    return width > 0 && (width < 48 || height < 48 || isBeyond);
  });
  const texts = [
    ...room.querySelectorAll<HTMLElement>("p, span, strong, small, dt, dd, li, button"),
  ];
  const small = texts.filter((each) => Number.parseFloat(getComputedStyle(each).fontSize) < 14);
  return [...buttons, ...small].map(({ className, textContent }) => `${className}: ${textContent}`);
}
