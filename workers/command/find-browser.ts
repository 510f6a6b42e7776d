import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { Refusal } from "../../shared/failure.ts";

const NAMES = ["google-chrome", "google-chrome-stable", "chromium", "chromium-browser", "chrome"];
const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
];

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Path of an installed Chrome or Chromium: `CHROME_PATH`, else by name on `PATH`, else where it is usually installed.
 * @throws Refusal `print/no-browser`
 */
export function installedBrowser(env: NodeJS.ProcessEnv): string {
  const given = env.CHROME_PATH;
  if (given) {
    if (runs(given)) return given;
    throw noBrowser(`CHROME_PATH is ${given}, which is not a program that runs.`);
  }
  const folders = (env.PATH ?? "").split(delimiter).filter(Boolean);
  const named = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  const found = [...named, ...PLACES].find(runs);
  if (found) return found;
  throw noBrowser(`Looked for ${NAMES.join(", ")} on PATH and for ${PLACES.join(", ")}.`);
}

function noBrowser(looked: string): Refusal {
  return new Refusal(
    "print/no-browser",
    `Expected an installed Chrome or Chromium, which lays the pages out; there is none. ${looked}`,
    "Install one (Debian: apt-get install chromium), or set CHROME_PATH to its program.",
  );
}
