import { signal } from "@preact/signals";

const dark = globalThis.matchMedia?.("(prefers-color-scheme: dark)");

/** Whether the machine is set to dark screens, now and whenever that is changed. */
export const prefersDark = signal(dark?.matches ?? false);

dark?.addEventListener("change", ({ matches }) => {
  prefersDark.value = matches;
});
