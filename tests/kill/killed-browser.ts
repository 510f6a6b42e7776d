import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { type Browser, chromium, type Page } from "playwright-core";
import { FLAGS } from "../helpers/harness.ts";
import { findBrowser } from "../tools/browser.mjs";

/** A browser with a profile on disk that can be killed as by the power switch of its process. */
export interface KilledBrowser {
  readonly page: Page;
  /** Ends the browser with all its processes (SIGKILL), and waits until they are gone. */
  readonly kill: () => Promise<void>;
}

const START_MS = 30_000;

/** Starts Chromium on a profile folder, with one empty page. */
export async function startOn(profile: string): Promise<KilledBrowser> {
  const portFile = join(profile, "DevToolsActivePort");
  rmSync(portFile, { force: true });
  const process = spawn(
    findBrowser(),
    [
      ...FLAGS,
      "--headless=new",
      "--remote-debugging-port=0",
      "--window-size=1280,720",
      `--user-data-dir=${profile}`,
      "about:blank",
    ],
    { detached: true, stdio: "ignore" },
  );
  const browser = await connect(portFile);
  const context = browser.contexts()[0]!;
  const page = context.pages()[0] ?? (await context.newPage());
  return { page, kill: () => killAll(process) };
}

async function connect(portFile: string): Promise<Browser> {
  const deadline = Date.now() + START_MS;
  for (;;) {
    const port = readPort(portFile);
    if (port) return chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    if (Date.now() > deadline) throw new Error("The browser did not start within 30 s.");
    await pause(20);
  }
}

function readPort(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8").split("\n")[0];
  } catch {
    return undefined;
  }
}

async function killAll(started: ChildProcess): Promise<void> {
  const group = -started.pid!;
  process.kill(group, "SIGKILL");
  while (isThere(group)) await pause(10);
}

function isThere(group: number): boolean {
  try {
    process.kill(group, 0);
    return true;
  } catch {
    return false;
  }
}
