import { fileStem, MOST_STEM, saveFile } from "../document/files.ts";

/** Hands a text or a picture to the person as a file named for the plan, the alternative and what it holds. */
export function download(content: string | Blob, name: FileName): void {
  saveFile(content, { type: name.type, name: fileName(name) });
}

export interface FileName {
  readonly title: string;
  readonly alternative: string;
  /** What it holds, one word. */
  readonly what: string;
  readonly extension: string;
  /** Media type. */
  readonly type: string;
}

/** Longest part of a name that is the alternative's, characters. */
const MOST_ALTERNATIVE = 24;

/** What tells two files of one plan apart is never cut off: a long title is. */
export function fileName({ title, alternative, what, extension }: FileName): string {
  const own = [fileStem(alternative, MOST_ALTERNATIVE), fileStem(what, MOST_STEM)];
  const kept = own.filter((part) => part !== "").join("-");
  const begin = fileStem(title, MOST_STEM - kept.length - 1) || "plan";
  return `${begin}-${kept}.${extension}`;
}
