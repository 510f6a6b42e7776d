import { expect, it } from "vitest";
import type { Check } from "../../shared/sizing-types.ts";
import { keyedChecks } from "../../src/worksheet/checks/keyed-checks.ts";

const check = (id: string, fromM: number) => ({ id, fromM }) as unknown as Check;

it("rows of checks keep their keys when others come before them, and none is there twice", () => {
  const before = [check("setback", 10), check("setback", 10), check("over-limit", 3)];
  const after = [check("water-gets-in", 0), ...before];
  const keys = (of: readonly Check[]) => keyedChecks(of).map(({ key }) => key);
  expect(keys(after).slice(1)).toEqual(keys(before));
  expect(new Set(keys(after)).size).toBe(4);
});
