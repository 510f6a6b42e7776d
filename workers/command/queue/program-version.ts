import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");
const DIGITS = 12;

/**
 * What the answers of this program follow from: its version, and a digest of its sources and of the versions of its
 * packages. Two machines give the same answers only where this is the same.
 */
export async function programVersion(): Promise<string> {
  const folders = await Promise.all(
    ["shared", "workers"].map(async (folder) => {
      const names = await readdir(join(ROOT, folder), { recursive: true });
      return names.map((name) => `${folder}/${name.replaceAll("\\", "/")}`);
    }),
  );
  const sources = folders.flat().filter((name) => /\.(ts|mjs)$/.test(name));
  const paths = ["package.json", ...sources].sort();
  const texts = await Promise.all(paths.map((path) => readFile(join(ROOT, path), "utf8")));
  const digest = createHash("sha256");
  for (const [k, text] of texts.entries()) {
    digest.update(`${paths[k]}\n${text.replaceAll("\r\n", "\n")}\n`);
  }
  const { version } = JSON.parse(texts[paths.indexOf("package.json")]!) as { version: string };
  return `${version}+${digest.digest("hex").slice(0, DIGITS)}`;
}
