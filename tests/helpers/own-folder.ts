import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";
import { drystead } from "./terminal.ts";

/** A folder of a test file's own, removed after its tests. */
export function ownFolder() {
  const folder = mkdtempSync(join(tmpdir(), "drystead-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    folder,
    /** Writes a file into it; where it is. */
    written: (name: string, text: string | Uint8Array): string => {
      const path = join(folder, name);
      writeFileSync(path, text);
      return path;
    },
    /** Runs a command line of the terminal program from it. */
    drystead: (words: readonly string[]) => drystead(words, folder),
  };
}
