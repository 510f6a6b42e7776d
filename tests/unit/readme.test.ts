import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { documentsIn } from "../../shared/handbook.ts";
import { drystead, ROOT } from "../helpers/terminal.ts";

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

/** What stands in `code` outside of blocks. */
function codeIn(text: string): string[] {
  return [...text.replace(/```.*?```/gs, "").matchAll(/`([^`\n]+)`/g)].map(([, code]) => code!);
}

it.each(["README.md", "DEVELOPERS.md"])("%s names files, scripts and names that exist", (name) => {
  const text = readFileSync(join(ROOT, name), "utf8");
  const made = ["third-party-notices.md"];
  const folders = ["src", "shared", "workers", "tests", "public", "sample-terrain"];
  const files = [
    ...["README.md", "package.json", "package-lock.json", "index.html", ...made, ...folders],
    ...folders.flatMap((folder) =>
      readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" }).map(
        (file) => `${folder}/${file}`,
      ),
    ),
  ];
  const { scripts } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
  const sources = files.filter((file) => /\.(?:[mc]?[jt]sx?|html)$/.test(file));
  const code = sources.map((file) => readFileSync(join(ROOT, file), "utf8")).join("\n");
  const words = new Set(code.match(/[\w$]+/g));

  const paths = codeIn(text).filter((each) =>
    /^[\w./-]+(?:\/|\.(?:tsx?|mjs|css|html|md|svg))$/.test(each),
  );
  const missing = paths
    .map((path) => path.replace(/\/$/, ""))
    .filter((path) => !files.some((file) => file === path || file.endsWith(`/${path}`)));
  expect(missing).toEqual([]);
  const run = [...text.matchAll(/npm (?:run )?(?:-s )?([a-z]+)\b/g)].map(([, script]) => script!);
  expect(run.filter((script) => !(script in scripts) && script !== "run")).toEqual([]);
  const codes = codeIn(text).filter((each) => /^(?:\w+|[a-z-]+\/[a-z-]+)$/.test(each));
  const unknown = codes.filter((each) =>
    each.includes("/")
      ? !code.includes(`"${each}"`) && !files.some((file) => file.endsWith(each))
      : !words.has(each),
  );
  expect(unknown).toEqual([]);
});

it.each(["size", "site", "trace", "sweep", "sweep-worker", "export", "print", "forecast"])(
  "DEVELOPERS.md has the command line of %s as its help has it",
  async (verb) => {
    const folded = (text: string) => text.replace(/\s+/g, " ").trim();
    const [usage] = (await drystead([verb, "--help"])).out.split("\n\n");
    const developers = readFileSync(join(ROOT, "DEVELOPERS.md"), "utf8");
    const line = folded(usage!).replace("drystead", "npm run -s drystead --");
    expect(folded(developers).includes(line), line).toBe(true);
  },
);
