import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import type { Page } from "playwright-core";
import { seededRandom } from "../helpers/seeded-random.ts";
import { startOn } from "./killed-browser.ts";
import { type Act, type Expected, look, randomAct, reopened, type Seen } from "./watched-plan.ts";

/** What became of the edits of many killed browsers. */
export interface KillReport {
  kills: number;
  /** Edits that the page said were kept. */
  edits: number;
  /** Of those, edits that were gone when the browser was started again. */
  lost: number;
  /** Edits that were on screen, not yet said to be kept, and gone: killed within the few ms of a write. */
  unfinished: number;
  /** What was expected and what came, for each loss. */
  readonly losses: string[];
}

interface Left {
  /** The state that the page said was kept last. */
  kept: Expected;
  edits: number;
  /** The edit that was under way when the browser was killed. */
  act: Act | null;
  isShown: boolean;
}

/** Latest moment of the kill, counted from the first edit after the page is there, ms. */
const KILL_WITHIN_MS = 900;
const PAUSE_MS = 40;
const OPEN_MS = 60_000;

/**
 * Opens the program at `address`, edits, kills the browser at a random moment, and looks whether every edit is
 * there when it is started again on the same profile; then goes on from there.
 */
export async function killMany(
  address: string,
  kills: number,
  seed: number,
  onKill: (report: KillReport) => void = () => {},
): Promise<KillReport> {
  const random = seededRandom(seed);
  const profile = mkdtempSync(join(tmpdir(), "drystead-kill-"));
  const report: KillReport = { kills: 0, edits: 0, lost: 0, unfinished: 0, losses: [] };
  let left: Left | null = null;
  try {
    for (let count = 0; count <= kills; count++) {
      const { page, kill } = await startOn(profile);
      try {
        const from: Expected = settle(report, left, await opened(page, address));
        if (count === kills) break;
        left = await editUntilKilled(page, from, random, kill);
      } finally {
        await kill().catch(() => {});
      }
      report.kills += 1;
      report.edits += left.edits;
      onKill(report);
    }
  } finally {
    rmSync(profile, { recursive: true, force: true });
  }
  return report;
}

async function opened(page: Page, address: string): Promise<Seen> {
  await page.goto(address, { waitUntil: "commit" });
  await page.locator('html[data-stored="yes"]').waitFor({ state: "attached", timeout: OPEN_MS });
  await page.locator(".stage-slider input").first().waitFor({ timeout: OPEN_MS });
  return look(page);
}

/** Compares what came back with what was left, and returns where to go on from. */
function settle(report: KillReport, left: Left | null, seen: Seen): Expected {
  if (left === null) return { seen, done: [], undone: [] };
  const { kept, act, isShown } = left;
  if (act?.isDone(seen)) return reopened(act.after(seen));
  if (isAlike(seen, kept.seen)) {
    if (isShown) report.unfinished += 1;
    return reopened(kept);
  }
  report.lost += 1;
  report.losses.push(`kept ${JSON.stringify(kept.seen)}, came back ${JSON.stringify(seen)}`);
  return { seen, done: [], undone: [] };
}

function isAlike(a: Seen, b: Seen): boolean {
  return a.title === b.title && a.stage === b.stage && a.undo === b.undo && a.redo === b.redo;
}

async function editUntilKilled(
  page: Page,
  from: Expected,
  random: () => number,
  kill: () => Promise<void>,
): Promise<Left> {
  const left: Left = { kept: from, edits: 0, act: null, isShown: false };
  let isKilled = false;
  const killing = pause(random() * KILL_WITHIN_MS).then(() => {
    isKilled = true;
    return kill();
  });
  try {
    while (!isKilled) {
      const act = randomAct(left.kept, random);
      left.act = act;
      left.isShown = false;
      await act.make(page);
      const seen = await until(page, (now) => {
        left.isShown ||= !isKilled && act.isDone(now);
        return act.isDone(now) && now.kept;
      });
      if (isKilled) break;
      left.kept = act.after(seen);
      left.edits += 1;
      left.act = null;
      await pause(random() * PAUSE_MS);
    }
  } catch (thrown) {
    if (!isKilled) throw thrown;
  }
  await killing;
  return left;
}

const EDIT_MS = 20_000;

async function until(page: Page, isThere: (now: Seen & { kept: boolean }) => boolean) {
  const deadline = Date.now() + EDIT_MS;
  for (;;) {
    const now = await look(page);
    if (isThere(now)) return now;
    if (Date.now() > deadline) throw new Error(`An edit never came: ${JSON.stringify(now)}`);
  }
}
