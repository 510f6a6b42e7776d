import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { documentsIn } from "../../shared/handbook.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const README = readFileSync(join(ROOT, "README.md"), "utf8");

/** First cells of the table under a heading, each split at its commas. */
function firstCells(heading: string): string[] {
  const part = README.split(/^## /m).find((each) => each.startsWith(`${heading}\n`)) ?? "";
  const rows = part.split("\n").filter((line) => line.startsWith("| "));
  return rows.slice(1).flatMap((row) => row.split("|")[1]!.trim().split(/,\s*/));
}

function sources(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => readFileSync(join(ROOT, folder, name), "utf8"));
}

it("the README gives a reason for every package, in the order of package.json", () => {
  const { dependencies, devDependencies } = JSON.parse(
    readFileSync(join(ROOT, "package.json"), "utf8"),
  );
  const packages = [...Object.keys(dependencies), ...Object.keys(devDependencies)];
  expect(firstCells("Built on")).toEqual(packages);
});

it("the README names every document that the program cites", () => {
  const cited = new Set(
    [...sources("shared"), ...sources("src")]
      .flatMap(documentsIn)
      .map((document) => document.split(":")[0]),
  );
  expect(cited.size).toBeGreaterThan(20);
  const named = firstCells("Sources");
  expect([...cited].filter((key) => !named.includes(key!))).toEqual([]);
});
