import { randomUUID } from "node:crypto";
import { realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { refusal } from "../../shared/failure.ts";

/**
 * Refuses to write over what is read.
 * @throws Refusal `output/is-input`
 */
export async function refuseInput(target: string, inputs: readonly string[]): Promise<void> {
  const own = await realpath(target).catch(() => target);
  for (const input of inputs) {
    if (own !== (await realpath(input).catch(() => input))) continue;
    throw refusal("output/is-input", { path: target });
  }
}

/**
 * Writes a file. A file that is there is replaced in one step when the new one is whole, so that a write that
 * fails leaves it as it was; a device or a pipe is written to.
 * @throws Refusal `output/not-written`
 */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  try {
    const target = await realpath(path).catch(() => path);
    const there = await stat(target).catch(() => null);
    if (there && !there.isFile()) await writeFile(target, content);
    else await replace(target, content, there?.mode);
  } catch (thrown) {
    const { code = "", message } = thrown as NodeJS.ErrnoException;
    throw refusal("output/not-written", { path, code, message });
  }
}

async function replace(
  target: string,
  content: string | Uint8Array,
  mode: number | undefined,
): Promise<void> {
  const beside = join(dirname(target), `.${basename(target).slice(0, 100)}.${randomUUID()}`);
  try {
    await writeFile(beside, content, mode === undefined ? {} : { mode });
    await rename(beside, target);
  } catch (thrown) {
    await rm(beside, { force: true });
    throw thrown;
  }
}
