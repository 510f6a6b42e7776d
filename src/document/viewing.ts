import { signal } from "@preact/signals";

/** Whether the plan can only be looked at on this page, because another page edits it. */
export const viewing = signal(false);
