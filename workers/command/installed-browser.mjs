/** Finds an installed Chrome or Chromium, for the pages that the terminal prints and for the browser tests. */
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";

/** Where {@link installedBrowser} looks: names on `PATH`, then places. */
export const NAMES = [
  "google-chrome",
  "google-chrome-stable",
  "chromium",
  "chromium-browser",
  "chrome",
];
export const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
];

function runs(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Path of a program on `PATH`; undefined where there is none of that name. */
export function onPath(name) {
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  return folders.map((folder) => join(folder, name)).find(runs);
}

/**
 * Path of an installed Chrome or Chromium: `CHROME_PATH`, else by name on `PATH`, else where it is usually installed.
 * @param refuse called with the path in `CHROME_PATH` when that is no program that runs
 * @returns undefined where there is none
 */
export function installedBrowser(refuse) {
  const given = process.env.CHROME_PATH;
  if (given) return runs(given) ? given : refuse(given);
  return NAMES.map(onPath).find(Boolean) ?? PLACES.find(runs);
}
