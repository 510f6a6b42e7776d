import { planFileName } from "../document/files.ts";

/** Hands a text to the person as a file named for the plan, the alternative and what it holds. */
export function downloadText(text: string, name: FileName): void {
  const address = URL.createObjectURL(new Blob([text], { type: name.type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName(name);
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
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

function fileName({ title, alternative, what, extension }: FileName): string {
  const stem = planFileName(`${title} ${alternative} ${what}`).replace(/\.geojson$/, "");
  return `${stem}.${extension}`;
}
