import { signal } from "@preact/signals";

/**
 * Why the plan can only be looked at on this page: another page edits it, or that page is closed and nobody does;
 * null when this page edits it.
 */
export const viewing = signal<"elsewhere" | "free" | null>(null);
