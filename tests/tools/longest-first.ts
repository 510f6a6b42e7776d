import { statSync } from "node:fs";
import type { TestSpecification } from "vitest/node";

/** Files of few lines that take many seconds: started last, one of them would run on alone. */
const LONG = [
  "unit/sweep-queue.test.ts",
  "unit/fuzz-short.test.ts",
  "reference/epsg-codes.test.ts",
  "browser/kill.test.ts",
  "browser/offline.test.ts",
  "browser/print.test.ts",
];

/**
 * The order of the files of tests, the same on every machine: projects apart, the longest first, so that no processor
 * waits for another at the end. Where nothing is known a larger file is taken to be longer.
 */
export class LongestFirst {
  async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const known = files.map((file) => ({
      file,
      project: file.project.name,
      isLong: LONG.some((name) => file.moduleId.endsWith(name)),
      bytes: statSync(file.moduleId).size,
    }));
    known.sort(
      (a, b) =>
        (a.project < b.project ? -1 : a.project > b.project ? 1 : 0) ||
        Number(b.isLong) - Number(a.isLong) ||
        b.bytes - a.bytes,
    );
    return known.map(({ file }) => file);
  }

  /** Runs are not cut in parts. */
  async shard(files: TestSpecification[]): Promise<TestSpecification[]> {
    return files;
  }
}
