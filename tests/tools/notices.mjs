/**
 * The licenses of every package that the program is built from, as one text: the production packages of
 * package-lock.json, each with the license files it ships.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./run.mjs";

const LICENSE_FILE = /^(licen[cs]e|copying|notice|ofl)([.-].*)?$/i;

/** @returns {string} text in Markdown, packages in order of their names */
export function notices() {
  const { packages } = JSON.parse(readFileSync(join(ROOT, "package-lock.json"), "utf8"));
  const used = Object.entries(packages)
    .filter(([path, { dev, optional, devOptional }]) => path && !dev && !optional && !devOptional)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const parts = used.map(([path, { version, license }]) => notice(path, version, license));
  return `# Licenses of the packages Drystead is built from\n\n${parts.join("\n")}`;
}

function notice(path, version, license) {
  const name = path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length);
  const folder = join(ROOT, path);
  const texts = readdirSync(folder)
    .filter((file) => LICENSE_FILE.test(file))
    .map((file) => readFileSync(join(folder, file), "utf8").trim());
  const stated = texts.length > 0 ? texts.join("\n\n") : standardText(folder, license);
  return `## ${name} ${version} (${license ?? "license not stated"})\n\n${stated.replaceAll(/^#/gm, "    #")}\n`;
}

/** The text of the license that a package states, where it ships none: its authors, and the standard words. */
function standardText(folder, license) {
  const { author, name } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const by = typeof author === "string" ? author : (author?.name ?? `the authors of ${name}`);
  if (!(license in WORDS_OF)) return "The package ships no license text.";
  return readFileSync(join(ROOT, WORDS_OF[license]), "utf8")
    .replace(/^Copyright \(c\) .*$/m, `Copyright (c) ${by}`)
    .trim();
}

/** Where the words of a license stand. */
const WORDS_OF = { MIT: "LICENSE", "Apache-2.0": "node_modules/flatbuffers/LICENSE" };

/** Puts the notices beside the built page. */
export function noticesPlugin() {
  return {
    name: "drystead-notices",
    apply: "build",
    generateBundle() {
      this.emitFile({ type: "asset", fileName: "third-party-notices.md", source: notices() });
    },
  };
}
