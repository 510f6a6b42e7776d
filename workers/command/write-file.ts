import { randomUUID } from "node:crypto";
import { realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { Refusal } from "../../shared/failure.ts";

const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  ENOENT: "there is no such folder",
  ENOTDIR: "a part of its path is not a folder",
  EISDIR: "it is a folder",
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  EROFS: "the disk can only be read",
  ENAMETOOLONG: "the name is too long",
};

/**
 * Refuses to write over what is read.
 * @throws Refusal `output/is-input`
 */
export async function refuseInput(target: string, inputs: readonly string[]): Promise<void> {
  const own = await realpath(target).catch(() => target);
  for (const input of inputs) {
    if (own !== (await realpath(input).catch(() => input))) continue;
    throw new Refusal(
      "output/is-input",
      `Expected another file to write; ${target} is read by this command.`,
      "Write to another file.",
    );
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
    throw new Refusal(
      "output/not-written",
      `${path} could not be written: ${REASONS[code] ?? message}.`,
      "Make room or choose another file, and start again.",
    );
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
