import { signal } from "@preact/signals";

/** Counts the reasons to size again that are not changes of the plan: new ground, a restarted engine. */
export const sizeAgain = signal(0);
