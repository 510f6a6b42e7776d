/**
 * Installs the packages of package-lock.json when they are missing or differ from it, and does nothing
 * otherwise. Runs by itself before start, test, bench and drystead.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { giveUp, ROOT, run } from "./run.mjs";

function entries(path) {
  try {
    return JSON.parse(readFileSync(join(ROOT, path), "utf8")).packages;
  } catch {
    return null;
  }
}

function installed() {
  const wanted = entries("package-lock.json");
  const present = entries("node_modules/.package-lock.json");
  if (!wanted)
    giveUp("package-lock.json is missing or damaged: take it from the repository again.");
  if (!present) return false;
  return Object.entries(wanted).every(([path, entry]) => {
    if (path === "") return true;
    if (!present[path]) return Boolean(entry.optional || entry.devOptional);
    return present[path].version === entry.version && present[path].integrity === entry.integrity;
  });
}

const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  giveUp(`Node 20.19 or later is needed; this is ${process.versions.node}.`);
}
if (!installed()) {
  process.stderr.write("Installing packages from package-lock.json ...\n");
  const code = run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]);
  if (code !== 0)
    giveUp("npm ci failed: see above. It needs the package registry or a filled cache.");
}
