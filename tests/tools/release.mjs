/** Builds the program and puts it into one ZIP file that works from any folder of any web server. */
import { readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { zipSync } from "fflate";
import { build } from "vite";
import { ROOT } from "./run.mjs";

await build({ root: ROOT, logLevel: "warn" });
const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
const folder = `drystead-${version}`;
const target = join(ROOT, "dist", `${folder}.zip`);
const dist = join(ROOT, "dist");
const files = readdirSync(dist, { recursive: true }).filter((name) =>
  statSync(join(dist, name)).isFile(),
);
const entries = files.map((name) => [
  `${folder}/${name.replaceAll("\\", "/")}`,
  readFileSync(join(dist, name)),
]);
entries.push([`${folder}/LICENSE`, readFileSync(join(ROOT, "LICENSE"))]);
writeFileSync(target, zipSync(Object.fromEntries(entries), { level: 9 }));
process.stdout.write(`${target}\n`);
