/**
 * Kills the browser at random moments while edits are made, and looks whether every kept edit is there afterwards:
 * `npm run kill -- --kills 1000 --seed 1`. It uses the document's modules on a page without map
 * and engine, or with --whole the built program. Prints the counts as JSON; ends with 1 when an edit was lost.
 */
import { parseArgs } from "node:util";
import { serveBuilt } from "../helpers/harness.ts";
import { serveDocumentPage } from "./document-page.ts";
import { killMany } from "./kill-run.ts";

const { values } = parseArgs({
  options: {
    kills: { type: "string", default: "100" },
    seed: { type: "string", default: "1" },
    whole: { type: "boolean", default: false },
  },
});
const kills = count("kills", values.kills);
const seed = count("seed", values.seed);
const house = values.whole ? await serveBuilt() : await serveDocumentPage();
const report = await killMany(house.address, kills, seed, (now) => {
  if (now.kills % 10 === 0) {
    process.stderr.write(`${now.kills} kills, ${now.edits} edits, ${now.lost} lost\n`);
  }
});
await house.close();
process.stdout.write(`${JSON.stringify({ seed, ...report }, null, 2)}\n`);
process.exit(report.lost === 0 ? 0 : 1);

function count(name: string, text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value > 0) return value;
  process.stderr.write(`Expected --${name} to be a whole number above 0; it is "${text}".\n`);
  process.exit(2);
}
