import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { ROOT } from "../helpers/terminal.ts";

const FILES = readdirSync(join(ROOT, "src"), { recursive: true, encoding: "utf8" });
const CODE = textOf(/\.tsx?$/);
const STYLES = textOf(/\.css$/).replace(/\/\*.*?\*\//gs, "");

/** Names that are put together where they are used: `lane-${kind}`, `${name}-mark`. */
const MADE = [
  ...[...CODE.matchAll(/([a-z][\w-]*-)\$\{/g)].map(([, start]) => new RegExp(`^${start}`)),
  ...[...CODE.matchAll(/\}(-[\w-]+)/g)].map(([, end]) => new RegExp(`${end}$`)),
];
const NAMED = new Set(CODE.match(/[A-Za-z][\w-]*/g));

function textOf(name: RegExp): string {
  const found = FILES.filter((file) => name.test(file));
  return found.map((file) => readFileSync(join(ROOT, "src", file), "utf8")).join("\n");
}

function namesIn(text: string, pattern: RegExp): string[] {
  return [...new Set([...text.matchAll(pattern)].map(([, name]) => name!))];
}

it("every class that is styled is named in the source, or put together there", () => {
  const styled = namesIn(STYLES, /\.([A-Za-z][\w-]*)/g);
  expect(styled.length).toBeGreaterThan(500);
  const unused = styled.filter(
    (name) =>
      !NAMED.has(name) && !name.startsWith("maplibregl") && !MADE.some((made) => made.test(name)),
  );
  expect(unused).toEqual([]);
});

it("every custom property that is read is set, and every one that is set is read", () => {
  const set = namesIn(STYLES, /(--[\w-]+)\s*:/g);
  const read = namesIn(STYLES + CODE, /var\(\s*(--[\w-]+)/g).filter((name) => !name.endsWith("-"));
  expect(read.filter((name) => !set.includes(name) && !CODE.includes(`"${name}"`))).toEqual([]);
  const isMade = (name: string) =>
    CODE.includes(name) || MADE.some((made) => made.test(name.slice(2)));
  expect(set.filter((name) => !read.includes(name) && !isMade(name))).toEqual([]);
});
