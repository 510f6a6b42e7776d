import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { ROOT } from "../helpers/terminal.ts";
import { notices } from "../tools/notices.mjs";

it("the notices have the words of a license for every package that the program needs", () => {
  const parts = notices().split(/^## /m).slice(1);
  const { dependencies } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
  const named = new Set(parts.map((part) => part.split(" ")[0]));
  expect(Object.keys(dependencies).filter((name) => !named.has(name))).toEqual([]);
  const short = parts.filter((part) => part.length < 400).map((part) => part.split(" ")[0]);
  const notBundled = ["@turf/jsts", "jsts"];
  expect(short).toEqual(notBundled);
  const lerc = parts.find((part) => part.startsWith("lerc "))!;
  expect(lerc).toContain("Apache License");
});
