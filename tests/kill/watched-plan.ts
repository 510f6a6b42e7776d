import type { Page } from "playwright-core";

/** What a person can see of the plan: the edits that are made here change one of these. */
export interface Seen {
  readonly title: string;
  readonly stage: string;
  readonly undo: boolean;
  readonly redo: boolean;
}

/** The plan as it must be, with what undo and redo must bring back. */
export interface Expected {
  readonly seen: Seen;
  readonly done: readonly Values[];
  readonly undone: readonly Values[];
}

type Values = Pick<Seen, "title" | "stage">;

/** One edit: how to make it, whether it is what is seen, and what must be there after it. */
export interface Act {
  readonly make: (page: Page) => Promise<void>;
  readonly isDone: (seen: Seen) => boolean;
  readonly after: (seen: Seen) => Expected;
}

/** Steps of undo that come back with a plan. */
const STEPS_STORED = 50;
const KINDS = ["title", "title", "drag", "undo", "undo", "redo"] as const;

/** An edit at random that can be made from here: a new title, a drag of the stage, undo or redo. */
export function randomAct(from: Expected, random: () => number): Act {
  const kind = KINDS[Math.floor(random() * KINDS.length)];
  if (kind === "drag") return drag(from, random());
  if (kind === "undo" && from.done.length > 0) return undo(from);
  if (kind === "redo" && from.undone.length > 0) return redo(from);
  return retitle(from, `Plan ${Math.floor(random() * 1e9)}`);
}

/** Read in the page as text: a loader's helpers for functions are not there. */
const LOOK = `({
  title: document.querySelector(".plan-title input")?.value ?? "",
  stage: document.querySelector(".stage-slider input")?.value ?? "",
  undo: document.querySelector('[aria-label^="Undo:"]') !== null,
  redo: document.querySelector('[aria-label^="Redo:"]') !== null,
  kept: document.documentElement.dataset.stored === "yes",
})`;

/** What is on the page now, and whether the page says that it is kept. */
export function look(page: Page): Promise<Seen & { readonly kept: boolean }> {
  return page.evaluate(LOOK);
}

/** The state that a page opened anew may show when the browser was killed there. */
export function reopened({ seen, done, undone }: Expected): Expected {
  return { seen, done: done.slice(-STEPS_STORED), undone: undone.slice(-STEPS_STORED) };
}

function retitle(from: Expected, title: string): Act {
  return {
    async make(page) {
      const field = page.getByLabel("Title of the plan");
      await field.fill(title);
      await field.press("Enter");
    },
    isDone: (seen) => seen.title === title && seen.stage === from.seen.stage && !seen.redo,
    after: (seen) => step(from, seen),
  };
}

function drag(from: Expected, to: number): Act {
  return {
    async make(page) {
      const box = (await page.locator(".stage-slider input").first().boundingBox())!;
      const y = box.y + box.height / 2;
      await page.mouse.move(box.x + box.width / 2, y);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width * (0.05 + 0.9 * to), y, { steps: 6 });
      await page.mouse.up();
    },
    isDone: (seen) =>
      seen.title === from.seen.title && seen.stage !== from.seen.stage && seen.undo && !seen.redo,
    after: (seen) => step(from, seen),
  };
}

function undo(from: Expected): Act {
  const back = from.done.at(-1)!;
  return {
    make: (page) => page.keyboard.press("Control+Z"),
    isDone: (seen) => isSame(seen, back) && seen.redo,
    after: (seen) => ({
      seen,
      done: from.done.slice(0, -1),
      undone: [...from.undone, values(from.seen)],
    }),
  };
}

function redo(from: Expected): Act {
  const forth = from.undone.at(-1)!;
  return {
    make: (page) => page.keyboard.press("Control+Shift+Z"),
    isDone: (seen) => isSame(seen, forth) && seen.undo,
    after: (seen) => ({
      seen,
      done: [...from.done, values(from.seen)],
      undone: from.undone.slice(0, -1),
    }),
  };
}

function step(from: Expected, seen: Seen): Expected {
  return { seen, done: [...from.done, values(from.seen)], undone: [] };
}

function values({ title, stage }: Seen): Values {
  return { title, stage };
}

function isSame(seen: Seen, { title, stage }: Values): boolean {
  return seen.title === title && seen.stage === stage;
}
