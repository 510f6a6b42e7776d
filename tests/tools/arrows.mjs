/**
 * Keeps the import arrows: src -> shared and the demo files; workers -> shared; src/engine.ts -> the
 * worker by its URL; shared -> nothing of ours outside itself; no DOM in shared/ and workers/ (the types
 * step compiles both without the DOM's types; this names the usual offenders in plain words). Inside src,
 * the folders as LAYERS has them, and the styles of each beside it.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { pathToFileURL } from "node:url";
import { ROOT } from "./run.mjs";
import { readSource } from "./source.mjs";

const ROOMS = ["src", "workers", "shared"];
/** The worker by its address alone; none of its code comes with it. */
const WORKER_ADDRESS = "../workers/terrain.worker.ts?worker&url";
/** Layers that a room of the screen may import, beside shared. */
const ROOM = ["document", "live", "drawing", "ui", "browser"];
/** What each folder of src may import of src beside itself. `engine` is src/engine.ts and src/engine/. */
const LAYERS = {
  browser: [],
  engine: ["browser"],
  document: ["browser"],
  live: ["document", "engine", "browser"],
  drawing: [],
  ui: ["browser"],
  map: ROOM,
  profile: ROOM,
  worksheet: ROOM,
  pages: ROOM,
  start: ROOM,
  field: ROOM,
  lesson: ROOM,
  buildings: ROOM,
};
/** Files of src in no folder. All but engine.ts put the layers together, and may import any but the engine. */
const LOOSE = ["main.tsx", "app.tsx", "app.css", "stale.css", "engine.ts", "vite-env.d.ts"].map(
  (name) => `src/${name}`,
);
const SCREEN_PACKAGES = /^(preact|@preact\/|maplibre-gl|terra-draw|@fontsource)/;
/** What the terminal alone says, which the page must not load. */
const OF_TERMINAL = /^shared\/words\/(?:terminal|refusals\/(?:terminal|queue))\.ts$/;
/** Names the types of all texts. */
const ALL_TEXTS = "shared/words/refusals.ts";
const DOM =
  /(?<![\w$.])(?:window\s*\.\s*(?:addEventListener|removeEventListener|inner\w+|location|open|setTimeout|requestAnimationFrame|devicePixelRatio|matchMedia|print)\b|document\s*\.\s*(?:createElement|querySelector|getElementById|addEventListener|body|head|documentElement)\b|localStorage\b|sessionStorage\b|requestAnimationFrame\b|HTML\w*Element\b|matchMedia\b)/;

/**
 * Every broken arrow in the files given (path from the project's folder -> text), as one sentence each.
 */
export function findOffences(files) {
  const styles = [...files].filter(([path]) => path.endsWith(".css"));
  const sources = [...files].filter(([path]) => !path.endsWith(".css"));
  return [...sources.flatMap(sourceOffences), ...styleOffences(styles, sources)];
}

function sourceOffences([path, text]) {
  const room = path.split("/")[0];
  const { imports, urls, code } = readSource(text);
  const offences = [
    looseOffence(path),
    ...imports.map((target) => importOffence(path, room, target)),
    ...urls.map((target) => urlOffence(path, target)),
  ];
  const dom = room === "src" ? null : DOM.exec(code);
  if (dom) offences.push(`${path} uses ${dom[0].trim()}: there is no DOM in ${room}/.`);
  return offences.filter((offence) => offence !== null);
}

function looseOffence(path) {
  const [room, folder] = path.split("/");
  if (room !== "src" || LOOSE.includes(path)) return null;
  return folder in LAYERS
    ? null
    : `${path} stands in no layer of src: ${Object.keys(LAYERS).join(", ")}.`;
}

/** The layer of src that a path belongs to; `wiring` for what puts them together. */
function layerOf(path) {
  if (path !== "src/engine.ts" && LOOSE.includes(path)) return "wiring";
  return path.split("/")[1].replace(/\.\w+$/, "");
}

function layerOffence(path, target) {
  const reached = reachedFrom(path, target);
  const [from, to] = [layerOf(path), layerOf(reached)];
  if (from === to) return null;
  if (reached.startsWith("src/engine/")) {
    return `${path} imports ${target}: src/engine.ts alone knows src/engine/.`;
  }
  const allowed = LAYERS[from] ?? Object.keys(LAYERS).filter((layer) => layer !== "engine");
  if (allowed.includes(to)) return null;
  const words = ["shared", ...allowed].join(", ");
  return `${path} imports ${target}: src/${from} may import ${words} and packages only.`;
}

/**
 * Selectors of a folder's styles whose classes all belong to other folders. A class that no source names whole is
 * put together there, and is not looked at; widgets (ui) and the files in no folder style what every room uses.
 */
function styleOffences(styles, sources) {
  const layersNaming = new Map();
  for (const [path, text] of sources) {
    if (!path.startsWith("src/")) continue;
    for (const [word] of text.matchAll(/[A-Za-z][\w-]*/g)) {
      const layers = layersNaming.get(word) ?? new Set();
      layersNaming.set(word, layers.add(layerOf(path)));
    }
  }
  return styles.flatMap(([path, text]) => {
    if (LOOSE.includes(path) || layerOf(path) === "ui") return [];
    const plain = text.replace(/\/\*.*?\*\//gs, "");
    const selectors = [...plain.matchAll(/([^{};]+)\{/g)].flatMap(([, list]) => list.split(","));
    return selectors.flatMap((selector) => {
      const owners = [...selector.matchAll(/\.([A-Za-z][\w-]*)/g)]
        .map(([, name]) => layersNaming.get(name))
        .filter((layers) => layers !== undefined);
      if (owners.length === 0 || owners.some((layers) => layers.has(layerOf(path)))) return [];
      return [`${path} styles ${selector.trim()}, which is of ${[...owners[0]].join(", ")}.`];
    });
  });
}

function importOffence(path, room, target) {
  if (target.startsWith("node:")) {
    const own = isTerminal(path);
    return own ? null : `${path} imports ${target}: only the terminal program uses Node.`;
  }
  if (!target.startsWith(".") && !target.startsWith("/")) {
    const screen = room !== "src" && SCREEN_PACKAGES.test(target);
    return screen ? `${path} imports ${target}: that package is for src/ alone.` : null;
  }
  if (path === "src/engine.ts" && target === WORKER_ADDRESS) return null;
  const isItsWords = OF_TERMINAL.test(reachedFrom(path, target));
  if (isItsWords && !isTerminal(path) && !OF_TERMINAL.test(path) && path !== ALL_TEXTS) {
    return `${path} imports ${target}: only the terminal program says that.`;
  }
  const reached = roomOf(path, target);
  if (room === "src" && isSample(reached, target)) return null;
  if (room === "src" && reached === "src") return layerOffence(path, target);
  const allowed = room === "shared" ? ["shared"] : [room, "shared"];
  if (allowed.includes(reached)) return null;
  return `${path} imports ${target}: ${room}/ may import ${allowed.join("/ and ")}/ and packages only.`;
}

function isTerminal(path) {
  return path === "workers/command.ts" || path.startsWith("workers/command/");
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
  return reachedFrom(path, target).split("/")[0];
}

/** What a file imports, by its path from the project's folder. */
function reachedFrom(path, target) {
  const plain = target.replace(/[?#].*$/, "");
  return plain.startsWith("/") ? plain.slice(1) : posix.join(posix.dirname(path), plain);
}

function sources(folder) {
  return readdirSync(join(ROOT, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(tsx?|css)$/.test(entry.name))
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
