/**
 * Finds a Chrome or Chromium for the browser tests and prints its path; on Debian as root it installs
 * the `chromium` package when there is none.
 */
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";
import { giveUp, run } from "./run.mjs";

const NAMES = ["google-chrome", "google-chrome-stable", "chromium", "chromium-browser", "chrome"];
const PLACES = [
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

function onPath(name) {
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  return folders.map((folder) => join(folder, name)).find(runs);
}

function installedBrowser() {
  const given = process.env.CHROME_PATH;
  if (given) {
    return runs(given)
      ? given
      : giveUp(`CHROME_PATH is ${given}, which is not a program that runs.`);
  }
  return NAMES.map(onPath).find(Boolean) ?? PLACES.find(runs);
}

function installFromDebian() {
  if (process.getuid?.() !== 0 || !onPath("apt-get")) return undefined;
  process.stderr.write("No Chrome or Chromium found: installing Debian's chromium ...\n");
  const quiet = { DEBIAN_FRONTEND: "noninteractive" };
  const install = ["install", "-y", "--no-install-recommends", "chromium"];
  run("apt-get", ["update", "-qq"], quiet);
  run("apt-get", ["-qq", ...install], quiet);
  return onPath("chromium");
}

/** Path of a browser that runs; ends the program with advice when there is none. */
export function findBrowser() {
  return (
    installedBrowser() ??
    installFromDebian() ??
    giveUp(
      "The browser tests need Chrome or Chromium, and none was found. Install one (Debian: apt-get install chromium), or set CHROME_PATH to its program.",
    )
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  process.stdout.write(`${findBrowser()}\n`);
}
