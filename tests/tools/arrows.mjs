/**
 * Keeps the import arrows: src -> shared and the demo files; workers -> shared; src/engine.ts -> the
 * worker by its URL; shared -> nothing of ours outside itself; no DOM in shared/ and workers/ (the types
 * step compiles both without the DOM's types; this names the usual offenders in plain words).
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { pathToFileURL } from "node:url";
import { ROOT } from "./run.mjs";
import { readSource } from "./source.mjs";

const ROOMS = ["src", "workers", "shared"];
/** The worker by its address alone; none of its code comes with it. */
const WORKER_ADDRESS = "../workers/terrain.worker.ts?worker&url";
const SCREEN_PACKAGES = /^(preact|@preact\/|maplibre-gl|terra-draw|@fontsource)/;
const DOM =
  /(?<![\w$.])(?:window\s*\.\s*(?:addEventListener|removeEventListener|inner\w+|location|open|setTimeout|requestAnimationFrame|devicePixelRatio|matchMedia|print)\b|document\s*\.\s*(?:createElement|querySelector|getElementById|addEventListener|body|head|documentElement)\b|localStorage\b|sessionStorage\b|requestAnimationFrame\b|HTML\w*Element\b|matchMedia\b)/;

/**
 * Every broken arrow in the files given (path from the project's folder -> text), as one sentence each.
 */
export function findOffences(files) {
  return [...files].flatMap(([path, text]) => {
    const room = path.split("/")[0];
    const { imports, urls, code } = readSource(text);
    const offences = [
      ...imports.map((target) => importOffence(path, room, target)),
      ...urls.map((target) => urlOffence(path, target)),
    ];
    const dom = room === "src" ? null : DOM.exec(code);
    if (dom) offences.push(`${path} uses ${dom[0].trim()}: there is no DOM in ${room}/.`);
    return offences.filter((offence) => offence !== null);
  });
}

function importOffence(path, room, target) {
  if (target.startsWith("node:")) {
    const terminal = path === "workers/command.ts" || path.startsWith("workers/command/");
    return terminal ? null : `${path} imports ${target}: only the terminal program uses Node.`;
  }
  if (!target.startsWith(".") && !target.startsWith("/")) {
    const screen = room !== "src" && SCREEN_PACKAGES.test(target);
    return screen ? `${path} imports ${target}: that package is for src/ alone.` : null;
  }
  if (path === "src/engine.ts" && target === WORKER_ADDRESS) return null;
  const reached = roomOf(path, target);
  if (room === "src" && isSample(reached, target)) return null;
  const allowed = room === "shared" ? ["shared"] : [room, "shared"];
  if (allowed.includes(reached)) return null;
  return `${path} imports ${target}: ${room}/ may import ${allowed.join("/ and ")}/ and packages only.`;
}

function urlOffence(path, target) {
  if (!target.startsWith(".") || target === "." || target.startsWith("./")) return null;
  const reached = roomOf(path, target);
  if (reached === path.split("/")[0] || reached === "shared") return null;
  if (isSample(reached, target)) return null;
  return `${path} points at ${target}: only src/engine.ts names the worker's URL.`;
}

/** A demo file by its address or its text, as against the code that makes it. */
function isSample(reached, target) {
  return reached === "sample-terrain" && /\.(tif|geojson)(\?(url|raw))?$/.test(target);
}

function roomOf(path, target) {
  const plain = target.replace(/[?#].*$/, "");
  const reached = plain.startsWith("/") ? plain.slice(1) : posix.join(posix.dirname(path), plain);
  return reached.split("/")[0];
}

function sources(folder) {
  return readdirSync(join(ROOT, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const files = new Map(
    ROOMS.flatMap(sources).map((file) => [
      file.slice(ROOT.length).replaceAll("\\", "/"),
      readFileSync(file, "utf8"),
    ]),
  );
  const offences = findOffences(files);
  for (const offence of offences) process.stderr.write(`${offence}\n`);
  process.stderr.write(`${files.size} files read, ${offences.length} broken arrows\n`);
  process.exitCode = offences.length === 0 && files.size > 0 ? 0 : 1;
}
