import { signal } from "@preact/signals";

/** What lies over the build view: the marks of a stretch, what is built so far, codes to show or to read. */
export type Panel = "mark" | "built" | "show-codes" | "read-codes";

export const panel = signal<Panel | null>(null);

export function openPanel(next: Panel): void {
  panel.value = next;
}

export function closePanel(): void {
  panel.value = null;
}
