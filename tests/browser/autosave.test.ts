import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { FLAGS } from "../helpers/harness.ts";
import { type ModulePage, serveModulePage } from "../helpers/module-page.ts";
import { findBrowser } from "../tools/browser.mjs";

/*
 * What is kept when pages close, reload, crash, run out of room or stand side by side: the document's modules alone
 * on an empty page, in a real browser.
 */

const SCRIPT = `
  import { autosave, storeTerrain, restore, forget } from "/src/document/autosave.ts";
  import { takeCopy, takeOver } from "/src/document/plan-place.ts";
  import { viewing } from "/src/document/viewing.ts";
  import { apply, history, plan, startFrom, undo } from "/src/document/store.ts";
  const failures = [];
  const followed = [];
  const failed = ({ code }) => ({ failure: code });
  const kept = await restore().catch(failed);
  if (kept?.plan) startFrom(kept);
  autosave({
    onFailure: ({ code }) => failures.push(code),
    onStoredAgain: () => failures.push("saved again"),
    onStored: (isStored) => (document.documentElement.dataset.stored = isStored ? "yes" : "no"),
    onTerrain: (files) => followed.push(...files.map(({ name, size }) => name + " " + size)),
  });
  window.keeping = {
    failures,
    followed,
    restored: kept && { title: kept.plan?.title, failure: kept.failure?.code ?? kept.failure },
    now: () => ({ title: plan.value.title, done: history.value.done.map(({ note }) => note) }),
    entitle: (title, gesture) =>
      apply({ note: "Entitle " + title, gesture, change: (now) => ({ ...now, title }) }).ok,
    undo, forget, takeOver, takeCopy,
    viewing: () => viewing.value,
    storeTerrain: (seed, bytes) =>
      storeTerrain([new File([noise(seed, bytes)], seed + ".tif", { lastModified: 5 })]).then(() => null, failed),
    keepAgain: () => storeTerrain(kept.terrain),
    terrain: () => Promise.all((kept?.terrain ?? []).map(async (file) =>
      [file.name, file.size, file.lastModified, same(new Uint8Array(await file.arrayBuffer()), noise(parseInt(file.name), file.size))])),
    folders: async () => {
      const root = await (await navigator.storage.getDirectory()).getDirectoryHandle("terrain");
      const names = [];
      for await (const slot of root.values()) for await (const name of slot.keys()) names.push(name);
      return names;
    },
  };
  function noise(seed, bytes) {
    const made = new Uint8Array(bytes);
    for (let i = 0, state = seed; i < bytes; i++) {
      state = (Math.imul(state, 1664525) + 1013904223) | 0;
      made[i] = state >>> 24;
    }
    return made;
  }
  function same(a, b) {
    return a.length === b.length && a.every((value, index) => value === b[index]);
  }
`;

interface Keeping {
  readonly failures: string[];
  /** Elevation data that another page has opened, as this one was told. */
  readonly followed: string[];
  readonly restored: { readonly title?: string; readonly failure: string | null } | null;
  now(): { title: string; done: string[] };
  entitle(title: string, gesture?: string): boolean;
  undo(): void;
  forget(): Promise<void>;
  takeOver(): Promise<void>;
  takeCopy(): Promise<void>;
  viewing(): boolean;
  storeTerrain(seed: number, bytes: number): Promise<{ failure: string } | null>;
  keepAgain(): Promise<void>;
  terrain(): Promise<unknown[]>;
  folders(): Promise<string[]>;
}

declare global {
  interface Window {
    keeping: Keeping;
  }
}

let pages: ModulePage;
let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  pages = await serveModulePage("", SCRIPT);
  browser = await chromium.launch({
    executablePath: findBrowser(),
    args: FLAGS,
  });
});

afterAll(async () => {
  await browser?.close();
  await pages?.close();
});

beforeEach(async () => {
  context = await browser.newContext();
});
afterEach(() => context.close());

const SOON = { timeout: 20_000 };

async function open(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(pages.address);
  await page.waitForFunction(() => window.keeping !== undefined);
  return page;
}

const now = (page: Page) => page.evaluate(() => window.keeping.now());
const restored = (page: Page) => page.evaluate(() => window.keeping.restored);
const failures = (page: Page) => page.evaluate(() => window.keeping.failures);
const entitle = (page: Page, title: string) =>
  page.evaluate((wanted) => window.keeping.entitle(wanted), title);

/** Resolves when the database holds the title that the page shows. */
async function written(page: Page): Promise<void> {
  const { title } = await now(page);
  await expect.poll(async () => await keptTitles(page), { timeout: 10_000 }).toContain(title);
}

async function keptTitles(page: Page): Promise<string[]> {
  const texts = await page.evaluate(async () => {
    const request = indexedDB.open("drystead");
    const database = await new Promise<IDBDatabase>((resolve) => {
      request.onsuccess = () => resolve(request.result);
    });
    const got = database.transaction("plans").objectStore("plans").getAll();
    const all = await new Promise<{ text: string }[]>((resolve) => {
      got.onsuccess = () => resolve(got.result);
    });
    database.close();
    return all.map(({ text }) => text);
  });
  return texts.map((text) => JSON.parse(text).drystead.title);
}

describe("a page", () => {
  it("that was never used restores nothing", async () => {
    const page = await open();
    expect(await restored(page)).toBeNull();
    expect(await failures(page)).toEqual([]);
  });

  it("closed right after an edit comes back with it and can undo", async () => {
    const page = await open();
    await entitle(page, "One");
    await written(page);
    await entitle(page, "Two");
    await page.close();
    const again = await open();
    expect(await now(again)).toMatchObject({ title: "Two" });
    await again.evaluate(() => window.keeping.undo());
    expect((await now(again)).title).toBe("One");
    await again.evaluate(() => window.keeping.undo());
    expect((await now(again)).title).toBe("Untitled plan");
  });

  it("closed so fast that the database misses the last edit comes back with it all the same", async () => {
    const page = await open();
    await entitle(page, "One");
    await written(page);
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("The page is going", "AbortError");
      };
      window.keeping.entitle("Two");
    });
    await page.close();
    const again = await open();
    expect(await now(again)).toEqual({
      title: "Two",
      done: ["Entitle One", "Last change before the page closed"],
    });
  });

  it("reloaded in the middle of a drag comes back as it was", async () => {
    const page = await open();
    await written(page);
    for (const title of ["a", "ab", "abc"]) {
      await page.evaluate((wanted) => window.keeping.entitle(wanted, "drag"), title);
    }
    await page.reload();
    await page.waitForFunction(() => window.keeping !== undefined);
    expect((await now(page)).title).toBe("abc");
    await page.evaluate(() => window.keeping.undo());
    expect((await now(page)).title).toBe("Untitled plan");
  });

  it("that crashes right after an edit is kept has lost nothing", async () => {
    const page = await open();
    await entitle(page, "Before the crash");
    await page.locator('html[data-stored="yes"]').waitFor({ state: "attached" });
    const gone = page.waitForEvent("crash");
    page.goto("chrome://crash").catch(() => {});
    await gone;
    await page.close();
    expect((await now(await open())).title).toBe("Before the crash");
  });

  it("that forgets starts anew", async () => {
    const page = await open();
    await entitle(page, "One");
    await page.evaluate(() => window.keeping.storeTerrain(3, 1000));
    await written(page);
    await page.evaluate(() => window.keeping.forget());
    await page.close();
    const again = await open();
    expect(await restored(again)).toBeNull();
    expect(await again.evaluate(() => window.keeping.folders())).toEqual([]);
  });
});

describe("terrain", () => {
  it("comes back byte for byte with its name and date, the latest alone", async () => {
    const page = await open();
    expect(await page.evaluate(() => window.keeping.storeTerrain(1, 3_000_000))).toBeNull();
    expect(await page.evaluate(() => window.keeping.storeTerrain(2, 5_000_001))).toBeNull();
    await written(page);
    await page.close();
    const again = await open();
    expect(await again.evaluate(() => window.keeping.terrain())).toEqual([
      ["2.tif", 5_000_001, 5, true],
    ]);
    const folders = await again.evaluate(() => window.keeping.folders());
    expect(folders.length).toBe(1);
    await again.evaluate(() => window.keeping.keepAgain());
    expect(await again.evaluate(() => window.keeping.folders())).toEqual(folders);
  });

  it("that is lost is told, and the plan is back without it", async () => {
    const page = await open();
    await page.evaluate(() => window.keeping.storeTerrain(1, 1000));
    await entitle(page, "With ground");
    await written(page);
    await page.evaluate(async () => {
      const origin = await navigator.storage.getDirectory();
      await origin.removeEntry("terrain", { recursive: true });
    });
    await page.close();
    const again = await open();
    expect(await restored(again)).toEqual({
      title: "With ground",
      failure: "autosave/terrain-lost",
    });
  });

  it("too large for the browser is refused, and the one before stays", async () => {
    const page = await open();
    await page.evaluate(() => window.keeping.storeTerrain(1, 1000));
    const session = await context.newCDPSession(page);
    const origin = new URL(pages.address).origin;
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 2_000_000 });
    expect(await page.evaluate(() => window.keeping.storeTerrain(2, 9_000_000))).toEqual({
      failure: "autosave/full",
    });
    await session.send("Storage.overrideQuotaForOrigin", { origin });
    await entitle(page, "Full");
    await written(page);
    await page.close();
    const again = await open();
    expect(await again.evaluate(() => window.keeping.terrain())).toEqual([
      ["1.tif", 1000, 5, true],
    ]);
  });
});

describe("no room for the plan", () => {
  /** A page that has had no room from its start; @returns it, and how to give it room. */
  async function openFull() {
    const page = await context.newPage();
    await page.goto(pages.empty);
    const session = await context.newCDPSession(page);
    const origin = new URL(pages.address).origin;
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
    await page.goto(pages.address);
    await page.waitForFunction(() => window.keeping !== undefined);
    await expect.poll(() => failures(page), SOON).toEqual(["autosave/full"]);
    return { page, giveRoom: () => session.send("Storage.overrideQuotaForOrigin", { origin }) };
  }

  it("is told at once, editing goes on, and the plan is kept again once there is room", async () => {
    const { page, giveRoom } = await openFull();
    await entitle(page, "No room");
    await entitle(page, "Still no room");
    const done = ["Entitle No room", "Entitle Still no room"];
    expect(await now(page)).toEqual({ title: "Still no room", done });
    expect(await page.locator("html").getAttribute("data-stored")).toBe("no");
    await giveRoom();
    await expect.poll(() => failures(page), SOON).toEqual(["autosave/full", "saved again"]);
    expect(await keptTitles(page)).toEqual(["Still no room"]);
    await page.close();
    expect((await now(await open())).done).toEqual(done);
  });

  it("does not lose the plan of a page that is closed meanwhile", async () => {
    const { page } = await openFull();
    await entitle(page, "No room");
    await page.close();
    expect((await now(await open())).title).toBe("No room");
  });
});

describe("two pages on one plan", () => {
  const viewing = (page: Page) => page.evaluate(() => window.keeping.viewing());
  const titleOn = async (page: Page) => (await now(page)).title;
  const takeOver = (page: Page) => page.evaluate(() => window.keeping.takeOver());

  async function openTwo() {
    const first = await open();
    await entitle(first, "One");
    await written(first);
    const second = await open();
    return { first, second };
  }

  it("only one of them edits; the other shows it, and refuses every edit", async () => {
    const { first, second } = await openTwo();
    expect(await now(second)).toEqual({ title: "One", done: ["Entitle One"] });
    expect([await viewing(first), await viewing(second)]).toEqual([false, true]);
    expect(await entitle(second, "Lost?")).toBe(false);
    await second.evaluate(() => window.keeping.undo());
    expect(await titleOn(second)).toBe("One");
    await entitle(first, "Two");
    await expect.poll(() => titleOn(second), SOON).toBe("Two");
    expect(await keptTitles(first)).toEqual(["Two"]);
    await first.evaluate(() => window.keeping.storeTerrain(7, 5000));
    const followed = (page: Page) => page.evaluate(() => window.keeping.followed);
    await expect.poll(() => followed(second), SOON).toEqual(["7.tif 5000"]);
    expect(await followed(first)).toEqual([]);
  });

  it("the other takes over with the last edit, even one not written yet, and the first then looks on", async () => {
    const { first, second } = await openTwo();
    await first.evaluate(() => {
      window.keeping.entitle("Two");
      window.keeping.entitle("Three");
    });
    await takeOver(second);
    expect(await titleOn(second)).toBe("Three");
    expect([await viewing(first), await viewing(second)]).toEqual([true, false]);
    expect(await entitle(first, "Lost?")).toBe(false);
    await entitle(second, "Four");
    await written(second);
    await expect.poll(() => titleOn(first), SOON).toBe("Four");
    await takeOver(first);
    expect([await viewing(first), await viewing(second)]).toEqual([false, true]);
    await entitle(first, "Five");
    await written(first);
    await first.close();
    await second.close();
    expect((await now(await open())).done).toEqual(
      ["One", "Two", "Three", "Four", "Five"].map((title) => `Entitle ${title}`),
    );
  });

  it("a reload keeps the plan on its page, at once and with its undo, also in mid-drag", async () => {
    const { first, second } = await openTwo();
    for (const [steps, title] of ["Two", "Three", "Four"].entries()) {
      await first.evaluate((wanted) => {
        dispatchEvent(new PointerEvent("pointerdown", { pointerId: 1, isPrimary: true }));
        window.keeping.entitle(`${wanted} begun`, wanted);
        window.keeping.entitle(wanted, wanted);
      }, title);
      await first.reload();
      await first.waitForFunction(() => window.keeping !== undefined);
      expect([await viewing(first), await viewing(second)]).toEqual([false, true]);
      const { title: after, done } = await now(first);
      expect([after, done.length]).toEqual([title, steps + 2]);
      await first.evaluate(() => window.keeping.undo());
      expect(await titleOn(first)).toBe(steps === 0 ? "One" : ["Two", "Three"][steps - 1]);
      await entitle(first, title);
      await written(first);
    }
  });

  it("a crash of the first gives the plan to the other, all of it kept; of two, to one", async () => {
    const { first, second } = await openTwo();
    const third = await open();
    await entitle(first, "Before the crash");
    await written(first);
    const gone = first.waitForEvent("crash");
    first.goto("chrome://crash").catch(() => {});
    await gone;
    const both = async () => [await viewing(second), await viewing(third)].sort();
    await expect.poll(both, SOON).toEqual([false, true]);
    const [heir, other] = (await viewing(second)) ? [third, second] : [second, third];
    expect(await titleOn(heir)).toBe("Before the crash");
    expect(await entitle(heir, "After it")).toBe(true);
    await written(heir);
    await expect.poll(() => titleOn(other), SOON).toBe("After it");
    expect(await entitle(other, "Lost?")).toBe(false);
    await heir.close();
    await expect.poll(() => viewing(other), SOON).toBe(false);
    expect(await entitle(other, "Its turn")).toBe(true);
  });

  it("a page that does not answer loses the plan, and goes on with a copy that is kept too", async () => {
    const { first, second } = await openTwo();
    const session = await context.newCDPSession(first);
    await session.send("Debugger.enable");
    await session.send("Debugger.pause");
    await takeOver(second);
    expect(await viewing(second)).toBe(false);
    await entitle(second, "Of the second");
    await written(second);
    await session.send("Debugger.resume").catch(() => {});
    await session.send("Debugger.disable");
    await expect.poll(() => failures(first), SOON).toContain("autosave/taken-over");
    await entitle(first, "Of the first");
    await written(first);
    expect((await keptTitles(first)).sort()).toEqual(["Of the first", "Of the second"]);
  });

  it("a copy is a plan of its own", async () => {
    const { first, second } = await openTwo();
    await second.evaluate(() => window.keeping.takeCopy());
    expect(await viewing(second)).toBe(false);
    await entitle(second, "Copy");
    await written(second);
    await entitle(first, "Two");
    await written(first);
    expect((await keptTitles(first)).sort()).toEqual(["Copy", "Two"]);
    await second.reload();
    await second.waitForFunction(() => window.keeping !== undefined);
    expect(await titleOn(second)).toBe("Copy");
  });
});

describe("a kept plan of a newer version", () => {
  it("is left alone, and this page keeps its own elsewhere", async () => {
    const page = await open();
    await entitle(page, "From the future");
    await written(page);
    await page.close();
    const editor = await context.newPage();
    await editor.goto(pages.empty);
    await editor.evaluate(async () => {
      const request = indexedDB.open("drystead");
      const database = await new Promise<IDBDatabase>((resolve) => {
        request.onsuccess = () => resolve(request.result);
      });
      const store = database.transaction("plans", "readwrite").objectStore("plans");
      const got = store.get("1");
      await new Promise<void>((resolve) => {
        got.onsuccess = () => {
          const text = got.result.text.replace('"version": 1', '"version": 9');
          store.put({ ...got.result, text, history: {} }, "1").onsuccess = () => resolve();
        };
      });
      database.close();
    });
    await editor.close();
    const again = await open();
    expect(await restored(again)).toEqual({ failure: "autosave/unreadable" });
    await entitle(again, "Meanwhile");
    await written(again);
    expect(await keptTitles(again)).toEqual(["From the future", "Meanwhile"]);
  });
});
