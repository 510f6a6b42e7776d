/**
 * Finds a Chrome or Chromium for the browser tests and prints its path; on Debian as root it installs
 * the `chromium` package when there is none.
 */
import { pathToFileURL } from "node:url";
import { installedBrowser, onPath } from "../../workers/command/installed-browser.mjs";
import { giveUp, run } from "./run.mjs";

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
    installedBrowser((given) =>
      giveUp(`CHROME_PATH is ${given}, which is not a program that runs.`),
    ) ??
    installFromDebian() ??
    giveUp(
      "The browser tests need Chrome or Chromium, and none was found. Install one (Debian: apt-get install chromium), or set CHROME_PATH to its program.",
    )
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  process.stdout.write(`${findBrowser()}\n`);
}
