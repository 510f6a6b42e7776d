import { signal } from "@preact/signals";

/** What lies over the build view: the marks of a stretch, what is built so far, codes to show or to read, the way to planning. */
export type Panel = "mark" | "built" | "show-codes" | "read-codes" | "unlock";

export const panel = signal<Panel | null>(null);

export function openPanel(next: Panel): void {
  panel.value = next;
}

export function closePanel(): void {
  panel.value = null;
}
