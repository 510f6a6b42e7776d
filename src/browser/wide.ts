import { signal } from "@preact/signals";

const wide = globalThis.matchMedia?.("(min-aspect-ratio: 1/1)");

/** Whether the screen is wider than high, now and whenever it turns. */
export const isWide = signal(wide?.matches ?? false);

wide?.addEventListener("change", ({ matches }) => {
  isWide.value = matches;
});
